package baymist.study;

import baymist.run.EngineBuild;
import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/**
 * Results kept in a folder, one file for each, named by their key and the build of the program that made them, so that a study that was stopped goes on
 * from what it had. Results of another build are passed over and counted. A file is written beside its place and moved there whole; one that can't be
 * read counts as not there. Nothing in the folder is needed: losing it costs time alone.
 */
public final class StudyStore {
    /** First bytes of a file: "BMST" and the version of what follows. */
    private static final int MAGIC = 0x424d5354;

    private static final int VERSION = 1;

    private final @Nullable Path folder;
    private final String build;
    private final Set<String> passedOver = ConcurrentHashMap.newKeySet();
    private final Set<String> taken = ConcurrentHashMap.newKeySet();

    private StudyStore(@Nullable Path folder, String build) {
        this.folder = folder;
        this.build = build;
    }

    /** Keeps nothing. */
    public static StudyStore none() {
        return new StudyStore(null, "");
    }

    /** Keeps results in a folder, which is made when the first one comes. */
    public static StudyStore in(Path folder) {
        return in(folder, EngineBuild.id());
    }

    /** As {@link #in(Path)} for a stated build. */
    static StudyStore in(Path folder, String build) {
        return new StudyStore(folder, build);
    }

    /** How many results that were asked for are kept from another build alone, and so were not taken. */
    public int passedOver() {
        return passedOver.size();
    }

    /** How many results were found and taken up. */
    public int taken() {
        return taken.size();
    }

    /** What was taken up and what was passed over, as a sentence; "" if neither. */
    public String words() {
        String taken = taken() == 0 ? "" : taken() + " finished " + runs(taken()) + " taken up from before";
        String passed = passedOver() == 0
                ? ""
                : passedOver() + " kept " + runs(passedOver())
                        + " passed over, since another build of the program made "
                        + (passedOver() == 1 ? "it" : "them");
        return taken + (taken.isEmpty() || passed.isEmpty() ? "" : "; ") + passed;
    }

    private static String runs(int count) {
        return count == 1 ? "run was" : "runs were";
    }

    /** Where results are kept, or null. */
    public @Nullable Path folder() {
        return folder;
    }

    /** The result of this key, or null. */
    public @Nullable StudyResult get(String key) {
        if (folder == null || !Files.isDirectory(folder)) {
            return null;
        }
        StudyResult result = read(folder, key);
        if (result != null) {
            taken.add(key);
        } else if (otherBuild(folder, key)) {
            passedOver.add(key);
        }
        return result;
    }

    private boolean otherBuild(Path in, String key) {
        try (DirectoryStream<Path> all = Files.newDirectoryStream(in, key + "-*.study")) {
            for (Path f : all) {
                if (!f.equals(file(in, key))) {
                    return true;
                }
            }
            return false;
        } catch (IOException | DirectoryIteratorException e) {
            return false;
        }
    }

    private @Nullable StudyResult read(Path in, String key) {
        Path file = file(in, key);
        if (!Files.isRegularFile(file)) {
            return null;
        }
        try (DataInputStream data = new DataInputStream(new BufferedInputStream(Files.newInputStream(file)))) {
            StudyResult result = data.readInt() == MAGIC && data.readInt() == VERSION ? read(data) : null;
            return result != null && result.key().equals(key) ? result : null;
        } catch (IOException e) {
            return null; // torn or foreign: it is computed again and written anew
        }
    }

    /**
     * Keeps a result.
     *
     * @throws IOException if the folder can't be written
     */
    public void put(StudyResult result) throws IOException {
        if (folder == null) {
            return;
        }
        Files.createDirectories(folder);
        Path part = folder.resolve("." + result.key() + "." + UUID.randomUUID() + ".part");
        try {
            try (DataOutputStream out = new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(part)))) {
                out.writeInt(MAGIC);
                out.writeInt(VERSION);
                write(result, out);
            }
            try {
                Files.move(part, file(folder, result.key()), StandardCopyOption.ATOMIC_MOVE);
            } catch (AtomicMoveNotSupportedException e) {
                Files.move(part, file(folder, result.key()), StandardCopyOption.REPLACE_EXISTING);
            }
        } finally {
            Files.deleteIfExists(part);
        }
    }

    private Path file(Path in, String key) {
        return in.resolve(key + "-" + build + ".study");
    }

    private static void write(StudyResult r, DataOutputStream out) throws IOException {
        out.writeUTF(r.key());
        String refused = r.refused();
        out.writeBoolean(refused != null);
        out.writeUTF(refused == null ? "" : refused);
        for (double v : new double[] {
            r.reached(),
            r.protectedShare(),
            r.thin(),
            r.excess(),
            r.seamsReached(),
            r.seamsProtected(),
            r.areaM2(),
            r.productM3(),
            r.triggerS(),
            r.hangS(),
            r.oversprayKg()
        }) {
            out.writeDouble(v);
        }
        out.writeInt(r.bare().size());
        for (StudyResult.Bare b : r.bare()) {
            out.writeUTF(b.where());
            out.writeDouble(b.areaM2());
        }
        out.writeInt(r.bareRegions());
        out.writeInt(r.items().size());
        for (String item : r.items()) {
            out.writeUTF(item);
        }
        out.writeInt(r.filmM().length);
        for (double v : r.filmM()) {
            out.writeDouble(v);
        }
    }

    private static StudyResult read(DataInputStream in) throws IOException {
        String key = in.readUTF();
        boolean isRefused = in.readBoolean();
        String why = in.readUTF();
        double[] v = doubles(in, 11);
        List<StudyResult.Bare> bare = new ArrayList<>();
        for (int n = in.readInt(); n > 0; n--) {
            bare.add(new StudyResult.Bare(in.readUTF(), in.readDouble()));
        }
        int regions = in.readInt();
        List<String> items = new ArrayList<>();
        for (int n = in.readInt(); n > 0; n--) {
            items.add(in.readUTF());
        }
        double[] film = doubles(in, in.readInt());
        return new StudyResult(
                key,
                isRefused ? why : null,
                v[0],
                v[1],
                v[2],
                v[3],
                v[4],
                v[5],
                v[6],
                v[7],
                v[8],
                v[9],
                v[10],
                bare,
                regions,
                items,
                film);
    }

    private static double[] doubles(DataInputStream in, int count) throws IOException {
        if (count < 0 || count > 1 << 27) {
            throw new IOException(count + " numbers");
        }
        double[] all = new double[count];
        for (int i = 0; i < count; i++) {
            all[i] = in.readDouble();
        }
        return all;
    }
}
