package baymist.card;

import baymist.card.WorkCard.Balance;
import baymist.card.WorkCard.Due;
import baymist.card.WorkCard.Item;
import baymist.card.WorkCard.Origin;
import baymist.card.WorkCard.Prediction;
import baymist.card.WorkCard.Step;
import baymist.cavity.Cavity;
import baymist.coverage.Fractions;
import baymist.geom.Box3;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec;
import baymist.scene.ProtectedItem;
import baymist.scene.Scene;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Makes a work card. */
public final class CardMaker {
    private static final Set<String> SETTINGS = Set.of("air", "walls", "fog transport", "size bins", "rays per jet");

    private CardMaker() {}

    /**
     * The card of a job.
     *
     * @throws SceneException CRD-001 if the scene has no passes: there is nothing to do then
     */
    public static WorkCard of(CardSource source, CardOptions options) {
        return of(source, options, null);
    }

    /**
     * The card of a touch-up, whose passes are for some places alone.
     *
     * @param places the places that were found thin or dry, with the film expected there afterwards
     */
    public static WorkCard touchUp(CardSource source, CardOptions options, List<WorkCard.Point> places) {
        return of(source, options, places);
    }

    private static WorkCard of(CardSource source, CardOptions options, @Nullable List<WorkCard.Point> places) {
        Scene scene = source.scene();
        requirePasses(scene);
        List<Integer> order = CardOrder.of(source.plan(), scene.passes().size(), scene.gravity());
        boolean changed = !order.equals(IntStream.range(0, order.size()).boxed().toList());
        List<Step> steps = new CardSteps(source).steps(order);
        List<WorkCard.Opening> openings = new CardOpenings(source).openings();
        CardQuantities quantities = new CardQuantities(source);
        double density = scene.product().densityKgPerM3();
        CardSource.Figures f = source.figures();
        boolean control = scene.hinge() != null || scene.cavity() instanceof CavitySpec.ControlSurface;
        return new WorkCard(
                origin(source),
                places != null,
                CardCautions.of(source, control),
                items(source),
                quantities.wands(steps),
                quantities.product(),
                quantities.supply(),
                quantities.times(),
                openings,
                steps,
                changed,
                CardOpenings.masks(openings, scene.protectedItems()),
                (f.drippedKg() + f.drippedLaterKg()) / density,
                control ? new Balance(f.oilKg(), f.hingeArmM(), f.hingeMomentNm()) : null,
                places != null ? places : new CardPoints(source).points(options.reasons()),
                prediction(source),
                new Due(
                        options.interval() != null
                                ? options.interval()
                                : scene.studies().card().interval(),
                        options.workDate()));
    }

    /**
     * Refuses a scene without passes.
     *
     * @throws SceneException CRD-001
     */
    public static void requirePasses(Scene scene) {
        if (scene.passes().isEmpty()) {
            throw new SceneException(
                    "CRD-001",
                    new SourcePlace(scene.file(), 0, "passes"),
                    "there are no passes, so there is nothing to write a card for; at least one pass would be right");
        }
    }

    private static Origin origin(CardSource source) {
        Scene scene = source.scene();
        return new Origin(
                scene.title(),
                scene.story(),
                source.cavity().name(),
                scene.file(),
                scene.hash(),
                source.record().engineVersion(),
                source.record().stateHash(),
                settings(source));
    }

    /** What one must set to get the same run; how it went along is left out. */
    private static Map<String, String> settings(CardSource source) {
        Map<String, String> kept = new LinkedHashMap<>();
        Vec3 size = source.grid().sizeM();
        kept.put(
                "voxels",
                String.format(Locale.ROOT, "%.3g x %.3g x %.3g mm", 1e3 * size.x(), 1e3 * size.y(), 1e3 * size.z()));
        source.record().settings().forEach((name, value) -> {
            if (SETTINGS.contains(name)) {
                kept.put(name, value);
            }
        });
        return kept;
    }

    private static List<Item> items(CardSource source) {
        List<Item> items = new ArrayList<>();
        for (ProtectedItem item : source.scene().protectedItems()) {
            Box3 box = boxOf(source.cavity(), source.cavity().partIndex(item.partName()));
            if (box != null) {
                items.add(new Item(item.name(), item.mask(), item.limitM(), box.centre()));
            }
        }
        return items;
    }

    private static @Nullable Box3 boxOf(Cavity cavity, int part) {
        TriangleMesh sheets = cavity.sheets();
        Box3 box = Box3.EMPTY;
        for (int t = 0; t < sheets.triangleCount(); t++) {
            if (cavity.partOfSheet(t) == part) {
                box = box.including(sheets.point(t, 0))
                        .including(sheets.point(t, 1))
                        .including(sheets.point(t, 2));
            }
        }
        return part < 0 || box.isEmpty() ? null : box;
    }

    private static Prediction prediction(CardSource source) {
        Fractions all = source.coverage().total();
        var targets = source.scene().targets();
        var confidence = source.figures().confidence();
        return new Prediction(
                all.areaM2(),
                all.reached(),
                all.protectedShare(),
                confidence.reachedLow(),
                confidence.reachedHigh(),
                source.coverage().seams().lengthM() > 0
                        ? source.coverage().seams().reached()
                        : Double.NaN,
                all.meanFilmM(),
                targets.hazeM(),
                targets.buildM(),
                targets.excessM());
    }
}
