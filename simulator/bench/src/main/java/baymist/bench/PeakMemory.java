package baymist.bench;

import com.sun.management.GarbageCollectionNotificationInfo;
import java.lang.management.GarbageCollectorMXBean;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.lang.management.MemoryUsage;
import java.util.Map;
import java.util.concurrent.atomic.AtomicLong;
import javax.management.NotificationEmitter;
import javax.management.openmbean.CompositeData;

/**
 * What is in use at most while this is open: of the heap as such, what is not yet collected included, and of what was left after collections, which is what had to be held.
 */
final class PeakMemory {
    private final AtomicLong heldBytes = new AtomicLong();
    private final AtomicLong usedBytes = new AtomicLong();

    PeakMemory() {
        for (MemoryPoolMXBean pool : ManagementFactory.getMemoryPoolMXBeans()) {
            pool.resetPeakUsage();
        }
        for (GarbageCollectorMXBean collector : ManagementFactory.getGarbageCollectorMXBeans()) {
            ((NotificationEmitter) collector)
                    .addNotificationListener(
                            (n, handback) -> {
                                if (n.getType()
                                        .equals(GarbageCollectionNotificationInfo.GARBAGE_COLLECTION_NOTIFICATION)) {
                                    see(GarbageCollectionNotificationInfo.from((CompositeData) n.getUserData()));
                                }
                            },
                            null,
                            null);
        }
    }

    private void see(GarbageCollectionNotificationInfo info) {
        usedBytes.accumulateAndGet(sum(info.getGcInfo().getMemoryUsageBeforeGc()), Math::max);
        long now = sum(info.getGcInfo().getMemoryUsageAfterGc());
        // a young collection leaves old garbage: only a full one tells what is held
        if (info.getGcAction().contains("major")) {
            heldBytes.accumulateAndGet(now, Math::max);
        }
    }

    private static long sum(Map<String, MemoryUsage> byPool) {
        long used = 0;
        for (MemoryPoolMXBean pool : ManagementFactory.getMemoryPoolMXBeans()) {
            MemoryUsage usage = byPool.get(pool.getName());
            used += pool.getType() == MemoryType.HEAP && usage != null ? usage.getUsed() : 0;
        }
        return used;
    }

    /** Largest amount in use before a collection, what it then took away included, bytes. */
    long usedBytes() {
        return usedBytes.get();
    }

    /** Collects now, so that what is held at this moment counts. */
    void look() {
        heldBytes.accumulateAndGet(heldNowBytes(), Math::max);
    }

    /** What is left after a collection now, bytes. */
    static long heldNowBytes() {
        System.gc();
        Runtime r = Runtime.getRuntime();
        return r.totalMemory() - r.freeMemory();
    }

    /** Largest amount left after a full collection, bytes. */
    long heldBytes() {
        return heldBytes.get();
    }

    /** Largest amount in use at any moment, what could have been collected included, bytes. */
    static long heapBytes() {
        long peak = 0;
        for (MemoryPoolMXBean pool : ManagementFactory.getMemoryPoolMXBeans()) {
            peak += pool.getType() == MemoryType.HEAP ? pool.getPeakUsage().getUsed() : 0;
        }
        return peak;
    }
}
