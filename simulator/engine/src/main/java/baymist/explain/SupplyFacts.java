package baymist.explain;

import baymist.cavity.Opening;
import baymist.run.RunResult;
import baymist.scene.OpeningState;
import baymist.scene.PassSpec;
import baymist.voxel.SurfelSet;
import java.util.ArrayList;
import java.util.List;

/**
 * Was there enough time and product, and was the way open?
 *
 * @param sprayedM3 product that left the tip, m³
 * @param evenM film that it would make spread evenly over all structure, m
 * @param targetM wanted film, m
 * @param directM film that jets left on the region, mean, m
 * @param fogM film that fog left on the region, mean, m
 * @param triggerS time with the trigger held, s
 * @param hangS time that fog hangs, all told, s
 * @param shutInHang openings open while spraying and shut while fog hangs
 * @param covered openings taped or plugged while spraying
 * @param shut openings shut otherwise while spraying
 */
record SupplyFacts(
        double sprayedM3,
        double evenM,
        double targetM,
        double directM,
        double fogM,
        double triggerS,
        double hangS,
        List<String> shutInHang,
        List<String> covered,
        List<String> shut) {
    static SupplyFacts find(RunResult base, Patch patch) {
        double density = base.scene().product().densityKgPerM3();
        SurfelSet surfels = base.grid().surfels();
        double area = 0;
        for (int s = 0; s < surfels.count(); s++) {
            area += surfels.isStructure(s) ? surfels.areaM2()[s] : 0;
        }
        double direct = 0;
        double fog = 0;
        for (int s : patch.surfels()) {
            direct += base.directKg()[s];
            fog += base.fogKg()[s];
        }
        double trigger =
                base.stations().stream().mapToDouble(s -> s.durationS()).sum();
        double hang = base.scene().hangS()
                + base.scene().passes().stream().mapToDouble(PassSpec::hangS).sum();
        List<String> early = new ArrayList<>();
        List<String> covered = new ArrayList<>();
        List<String> shut = new ArrayList<>();
        for (Opening o : base.cavity().openings()) {
            OpeningState pass = o.states().pass();
            if (pass == OpeningState.OPEN && o.states().hang() != OpeningState.OPEN) {
                early.add(o.name());
            } else if (pass == OpeningState.TAPED || pass == OpeningState.PLUGGED) {
                covered.add(o.name());
            } else if (pass == OpeningState.CLOSED) {
                shut.add(o.name());
            }
        }
        double sprayed = base.ledger().sprayedKg();
        return new SupplyFacts(
                sprayed / density,
                area > 0 ? sprayed / density / area : 0,
                base.scene().targets().buildM(),
                direct / density / patch.areaM2(),
                fog / density / patch.areaM2(),
                trigger,
                hang,
                early,
                covered,
                shut);
    }

    Fact supply(double endShare) {
        String enough = evenM >= targetM
                ? Words.say("enough for %s everywhere if it were spread evenly", Words.film(evenM))
                : Words.say(
                        "which spread evenly over the whole inside would make only %s, less than the %s that is wanted",
                        Words.film(evenM), Words.film(targetM));
        String end = endShare > 0.2
                ? Words.say(" When it ends, the fog there still has %s of its peak.", Words.share(endShare))
                : endShare > 0 ? " By the end the fog there has gone." : "";
        String got = directM + fogM <= 0
                ? "nothing of it"
                : Words.film(directM) + " of it from jets and " + Words.film(fogM) + " from fog";
        return Fact.of(
                "supply",
                Words.say(
                        "While the trigger was held for %s, %s of product left the tip, %s. Fog hangs for %s in all.%s The"
                                + " region got %s.",
                        Words.time(triggerS), Words.volume(sprayedM3), enough, Words.time(hangS), end, got),
                Fact.Numbers.of("sprayedM3", sprayedM3)
                        .and("evenFilmUm", 1e6 * evenM)
                        .and("targetUm", 1e6 * targetM)
                        .and("directUm", 1e6 * directM)
                        .and("fogUm", 1e6 * fogM)
                        .and("triggerS", triggerS)
                        .and("hangS", hangS));
    }

    Fact openings(double maskedShare) {
        List<String> said = new ArrayList<>();
        if (maskedShare > 0) {
            said.add(Words.say("%s of the region lies under a mask, tape or plug.", Words.share(maskedShare)));
        }
        if (!shutInHang.isEmpty()) {
            said.add(Words.list(quoted(shutInHang)) + (shutInHang.size() > 1 ? " are" : " is")
                    + " open while spraying and shut while the fog hangs.");
        }
        if (!covered.isEmpty()) {
            said.add(Words.list(quoted(covered)) + (covered.size() > 1 ? " are" : " is")
                    + " taped or plugged while spraying.");
        }
        if (!shut.isEmpty()) {
            said.add(Words.list(quoted(shut)) + (shut.size() > 1 ? " stay" : " stays") + " shut while spraying.");
        }
        return Fact.of(
                "openings",
                said.isEmpty() ? "Nothing is masked or shut." : String.join(" ", said),
                Fact.Numbers.of("maskedShare", maskedShare));
    }

    private static List<String> quoted(List<String> names) {
        return names.stream().map(n -> "'" + n + "'").toList();
    }
}
