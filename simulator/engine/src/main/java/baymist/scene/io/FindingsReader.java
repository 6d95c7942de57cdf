package baymist.scene.io;

import baymist.problem.SourcePlace;
import baymist.scene.Inspection;
import baymist.scene.Inspection.Place;
import baymist.scene.Inspection.Seen;
import baymist.scene.io.Value.Fields;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Reads a findings file; docs/formats/findings.md explains it. */
public final class FindingsReader {
    private FindingsReader() {}

    /**
     * Reads and validates a findings file.
     *
     * @throws baymist.problem.SceneException with every problem found, as {@link SceneReader#read}
     */
    public static Inspection read(Path file) {
        Problems problems = new Problems();
        SourceFiles files = new SourceFiles(problems);
        Value root =
                new Decoder(files, problems, file).decodeFile(FindingsFormat.FINDINGS, SourcePlace.of(file.toString()));
        if (problems.any() || !(root instanceof Fields f)) {
            throw problems.exception();
        }
        List<Place> places = new ArrayList<>();
        for (Fields p : f.list("findings")) {
            places.add(new Place(
                    p.vector("at"),
                    p.has("region") ? p.text("region") : null,
                    p.has("part") ? p.text("part") : null,
                    Seen.valueOf(p.text("seen").toUpperCase(Locale.ROOT)),
                    p.si("film", Double.NaN),
                    p.si("radius"),
                    p.place()));
        }
        return new Inspection(f.text("title"), places);
    }
}
