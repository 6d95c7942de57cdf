package baymist.card;

import baymist.access.ClockAngle;
import baymist.access.Insertion;
import baymist.access.Station;
import baymist.card.WorkCard.Step;
import baymist.coverage.Compass;
import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.run.Approach;
import baymist.scene.PassSpec;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.List;

/** Writes each pass as an order. */
final class CardSteps {
    private static final double TURN = 2 * Math.PI;

    private final CardSource source;
    private final Compass compass;

    CardSteps(CardSource source) {
        this.source = source;
        Box3 box = source.cavity().sheets().bounds();
        compass = Compass.of(source.cavity(), box.min().y(), box.max().y());
    }

    List<Step> steps(List<Integer> order) {
        List<Step> steps = new ArrayList<>();
        for (int pass : order) {
            steps.add(step(steps.size() + 1, pass));
        }
        return steps;
    }

    private Step step(int number, int index) {
        PassSpec pass = source.scene().passes().get(index);
        Insertion in = source.insertions().get(index);
        WandSpec wand = Approach.wand(source.scene(), pass);
        List<Station> stations =
                source.plan().stations().stream().filter(s -> s.pass() == index).toList();
        double trigger = stations.stream().mapToDouble(Station::durationS).sum();
        // stations stand for stretches: the first begins half a stretch deeper than its middle
        Station first = stations.get(0);
        Station last = stations.get(stations.size() - 1);
        double from = first.depthM() + first.travelM() / 2;
        double to = last.depthM() - last.travelM() / 2;
        boolean bent = wand.kind() == WandSpec.Kind.BENT;
        // a hook is turned by its handle, outside; its clock angle says where the tip looks
        Vec3 axis = bent ? in.axis() : in.path().tipAxis(Math.max(from, 1e-6));
        boolean deepest = Double.isInfinite(pass.fromDepthM()) || pass.fromDepthM() > from + 1e-6;
        double rate = source.figures().sprayedKg() / Math.max(1e-12, allTriggerS());
        return new Step(
                number,
                index,
                pass.name(),
                pass.entry(),
                source.cavity().openings().get(in.openingIndex()).name(),
                wand.name(),
                wand.kind(),
                from,
                to,
                deepest ? in.stoppedBy() : null,
                from - to > 1e-9 ? pass.drawBackMPerS() : 0,
                pass.holdS(),
                trigger,
                pass.hangS(),
                ((pass.clockRad() % TURN) + TURN) % TURN,
                Math.abs(axis.z()) <= Math.cos(ClockAngle.VERTICAL_RAD),
                pointing(bent ? first.pose().axis() : first.pose().pin()),
                Turning.matters(wand),
                in.originM(),
                in.axis(),
                way(in, from, pass.clockRad()),
                tips(in, pass, stations, from, to),
                CardOrder.heightM(source.plan(), index, source.scene().gravity()),
                rate * trigger / source.scene().product().densityKgPerM3());
    }

    /** From where the trigger goes on to where it goes off; stations stand for the middles of stretches between. */
    private static List<Vec3> tips(Insertion in, PassSpec pass, List<Station> stations, double fromM, double toM) {
        List<Vec3> tips = new ArrayList<>();
        tips.add(in.path().tip(fromM, pass.clockRad()).positionM());
        stations.stream()
                .filter(s -> s.travelM() > 0)
                .forEach(s -> tips.add(s.pose().positionM()));
        if (fromM > toM) {
            tips.add(in.path().tip(toM, pass.clockRad()).positionM());
        }
        return tips;
    }

    private double allTriggerS() {
        return source.plan().stations().stream().mapToDouble(Station::durationS).sum();
    }

    private static List<Vec3> way(Insertion in, double fromM, double clockRad) {
        double depth = Math.max(1e-6, Math.min(fromM, in.path().maxDepthM()));
        return in.path().body(depth, clockRad).centrelineM();
    }

    /** The structure's word for a direction, of two where it lies between them: "aft and up". */
    private String pointing(Vec3 d) {
        List<String> words = new ArrayList<>();
        List<Integer> axes = new ArrayList<>(List.of(0, 1, 2));
        axes.sort((a, b) -> Double.compare(Math.abs(d.get(b)), Math.abs(d.get(a))));
        double most = Math.abs(d.get(axes.get(0)));
        for (int axis : axes) {
            if (Math.abs(d.get(axis)) > 0.5 * most && words.size() < 2) {
                words.add(axis == 2 ? (d.z() > 0 ? "up" : "down") : compass.word(axis, d.get(axis) > 0));
            }
        }
        return String.join(" and ", words);
    }
}
