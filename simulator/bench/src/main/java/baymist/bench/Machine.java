package baymist.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** What figures were measured on. */
final class Machine {
    private Machine() {}

    /** Processor, cores, heap and Java in one sentence without its stop. */
    static String words() {
        return String.format(
                Locale.ROOT,
                "%s, %d cores, heap of at most %.1f GB, Java %s",
                processor(),
                Runtime.getRuntime().availableProcessors(),
                1e-9 * Runtime.getRuntime().maxMemory(),
                Runtime.version().feature());
    }

    /** Whether Java was started with its vector module. */
    static boolean vectors() {
        return ModuleLayer.boot().findModule("jdk.incubator.vector").isPresent();
    }

    private static String processor() {
        try {
            for (String line : Files.readAllLines(Path.of("/proc/cpuinfo"))) {
                if (line.startsWith("model name")) {
                    return line.substring(line.indexOf(':') + 1).strip();
                }
            }
        } catch (IOException e) {
            // not a Linux: the architecture must do
        }
        return System.getProperty("os.arch", "unknown processor");
    }
}
