package baymist.study;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Results kept in a folder, one file for each, named by their key, so that a study that was stopped goes on from what it had. A
 * file is written
 * beside its place and moved there whole; one that can't be read counts as not there. Nothing in the folder is needed: losing it
 * costs time alone.
 */
public final class StudyStore {
    /** First bytes of a file: "BMST" and the version of what follows. */
    private static final int MAGIC = 0x424d5354;

    private static final int VERSION = 1;

    private final @Nullable Path folder;

    private StudyStore(@Nullable Path folder) {
        this.folder = folder;
    }

    /** Keeps nothing. */
    public static StudyStore none() {
        return new StudyStore(null);
    }

    /** Keeps results in a folder, which is made when the first one comes. */
    public static StudyStore in(Path folder) {
        return new StudyStore(folder);
    }

    /** Where results are kept, or null. */
    public @Nullable Path folder() {
        return folder;
    }

    /** The result of this key, or null. */
    public @Nullable StudyResult get(String key) {
        if (folder == null || !Files.isRegularFile(file(folder, key))) {
            return null;
        }
        try (DataInputStream in =
                new DataInputStream(new BufferedInputStream(Files.newInputStream(file(folder, key))))) {
            StudyResult result = in.readInt() == MAGIC && in.readInt() == VERSION ? read(in) : null;
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

    private static Path file(Path folder, String key) {
        return folder.resolve(key + ".study");
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
