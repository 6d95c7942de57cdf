package baymist.print;

import baymist.card.CardMaker;
import baymist.card.CardOptions;
import baymist.card.CardSource;
import baymist.card.WorkCard;
import baymist.cavity.CavityBuilder;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.Simulation;
import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import baymist.study.Planning;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Cards to print: jobs at a resolution at which the words and pictures are those of a full run and the films are rough. */
final class CardJobs {
    private static final Planning ROUGH = new Planning(4, 3, 16, 8);

    private CardJobs() {}

    static CardSource source(Path scene) {
        Scene read = SceneReader.read(scene);
        Scene rough = ROUGH.of(read, CavityBuilder.build(read));
        return CardSource.of(Simulation.run(rough, new RunOptions(2), RunObserver.NONE));
    }

    static CardPage page(CardSource source, Path scene, Paper paper) throws IOException {
        WorkCard card = CardMaker.of(source, CardOptions.NONE);
        return new CardPage(card, source, CardUnits.of(Files.readString(scene)), paper);
    }

    /** Writes the cards of scenes into a folder, to be looked at: folder, then scene files. */
    public static void main(String[] args) throws IOException {
        Path folder = Files.createDirectories(Path.of(args[0]));
        for (String file : List.of(args).subList(1, args.length)) {
            Path scene = Path.of(file);
            CardSource source = source(scene);
            String name = scene.getFileName().toString().replace(".yaml", "");
            for (Paper paper : Paper.values()) {
                try (OutputStream out = Files.newOutputStream(folder.resolve(name + "-" + paper.css() + ".pdf"))) {
                    page(source, scene, paper).writePdf(out);
                }
            }
            Files.writeString(
                    folder.resolve(name + ".html"),
                    page(source, scene, Paper.A4).html());
        }
    }
}
