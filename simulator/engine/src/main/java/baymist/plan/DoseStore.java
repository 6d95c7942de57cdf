package baymist.plan;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Doses kept in a folder, one file a station, named by what they were computed from: a build that was stopped goes on from what it had. A file is
 * written beside its place and moved there whole; one that can't be read counts as not there. Losing the folder costs time alone.
 */
public final class DoseStore {
    /** First bytes of a file: "BMDO" and the version of what follows. */
    private static final int MAGIC = 0x424d444f;

    private static final int VERSION = 1;

    private final @Nullable Path folder;

    private DoseStore(@Nullable Path folder) {
        this.folder = folder;
    }

    /** Keeps nothing. */
    public static DoseStore none() {
        return new DoseStore(null);
    }

    /** Keeps doses in a folder, which is made when the first one comes. */
    public static DoseStore in(Path folder) {
        return new DoseStore(folder);
    }

    @Nullable
    DoseColumn get(String key, int bins, int surfels) {
        if (folder == null || !Files.isRegularFile(file(folder, key))) {
            return null;
        }
        try (DataInputStream in =
                new DataInputStream(new BufferedInputStream(Files.newInputStream(file(folder, key)), 1 << 16))) {
            if (in.readInt() != MAGIC
                    || in.readInt() != VERSION
                    || !in.readUTF().equals(key)) {
                return null;
            }
            if (in.readInt() != bins || in.readInt() != surfels) {
                return null;
            }
            double sprayed = in.readDouble();
            float[] film = new float[bins * surfels];
            for (int i = 0; i < film.length; i++) {
                film[i] = in.readFloat();
            }
            return new DoseColumn(bins, film, sprayed);
        } catch (IOException e) {
            return null; // torn or foreign: it is computed again and written anew
        }
    }

    void put(String key, DoseColumn column) throws IOException {
        if (folder == null) {
            return;
        }
        Files.createDirectories(folder);
        Path part = folder.resolve("." + key + "." + UUID.randomUUID() + ".part");
        try {
            try (DataOutputStream out =
                    new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(part), 1 << 16))) {
                out.writeInt(MAGIC);
                out.writeInt(VERSION);
                out.writeUTF(key);
                out.writeInt(column.bins());
                out.writeInt(column.surfels());
                out.writeDouble(column.sprayedKgPerS());
                for (float f : column.filmMPerS()) {
                    out.writeFloat(f);
                }
            }
            try {
                Files.move(part, file(folder, key), StandardCopyOption.ATOMIC_MOVE);
            } catch (AtomicMoveNotSupportedException e) {
                Files.move(part, file(folder, key), StandardCopyOption.REPLACE_EXISTING);
            }
        } finally {
            Files.deleteIfExists(part);
        }
    }

    private static Path file(Path folder, String key) {
        return folder.resolve(key + ".dose");
    }
}
