package baymist.scene.io;

import baymist.scene.Flexibility;
import baymist.scene.WandMaterial;
import baymist.scene.WandPiece;
import baymist.scene.WandSpec.Coupling;
import baymist.scene.io.Value.Fields;
import baymist.units.Quantities;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Makes the centre line, material, flexibility and couplings of a wand. */
final class WandBody {
    private final Problems problems;

    WandBody(Problems problems) {
        this.problems = problems;
    }

    /** Pieces from the outside end to the tip; one straight where something is wrong. */
    List<WandPiece> pieces(Fields wand, double lengthM, double outerM) {
        List<Fields> bends = new ArrayList<>(wand.list("bends"));
        bends.sort(Comparator.comparingDouble((Fields b) -> b.si("from_tip")).reversed());
        List<WandPiece> pieces = new ArrayList<>();
        double left = lengthM;
        for (Fields b : bends) {
            double radius = b.si("radius");
            double angle = b.si("angle");
            if (!tightEnough(b, "radius", radius, outerM, SceneProblem.BEND_TIGHT) || !(angle > 0)) {
                return whole(lengthM);
            }
            double straight = left - b.si("from_tip") - radius * angle;
            if (straight < -1e-9) {
                problems.add(
                        SceneProblem.BENDS_OVERLAP,
                        b.at("from_tip"),
                        "the bend takes " + Quantities.length(radius * angle) + " of tube and ends "
                                + b.written("from_tip")
                                + " from the tip, but only " + Quantities.length(left)
                                + " are left from there on; move it, or make the wand longer");
                return whole(lengthM);
            }
            if (straight > 1e-9) {
                pieces.add(new WandPiece.Straight(straight));
            }
            pieces.add(new WandPiece.Bend(radius, angle, b.si("roll")));
            left = b.si("from_tip");
        }
        if (left > 1e-9) {
            pieces.add(new WandPiece.Straight(left));
        }
        return pieces;
    }

    private static List<WandPiece> whole(double lengthM) {
        return lengthM > 0 ? List.of(new WandPiece.Straight(lengthM)) : List.of();
    }

    /** A tube bent round less than its own diameter folds flat (common practice, no source). */
    private boolean tightEnough(Fields f, String key, double radiusM, double outerM, SceneProblem problem) {
        if (radiusM < outerM) {
            problems.add(
                    problem,
                    f.at(key),
                    "the bend radius " + f.written(key) + " is less than the wand is thick ("
                            + Quantities.length(outerM)
                            + "); a radius of the centre line of at least the outside diameter is wanted");
        }
        return radiusM >= outerM;
    }

    @Nullable
    Flexibility flexibility(@Nullable Fields f, double outerM) {
        if (f == null) {
            return null;
        }
        double radius = f.si("bend_radius");
        double total = f.si("total_bend");
        double push = f.si("push", Double.POSITIVE_INFINITY);
        double friction = f.si("friction");
        boolean whole = radius > 0 && total >= 0 && push > 0 && friction >= 0;
        return tightEnough(f, "bend_radius", radius, outerM, SceneProblem.FLEX_TIGHT) && whole
                ? new Flexibility(radius, total, push, friction)
                : null;
    }

    WandMaterial material(Fields wand) {
        Fields own = wand.fields("material");
        if (own != null) {
            return new WandMaterial(own.text("name"), own.si("density"), own.si("modulus"), own.si("yield"));
        }
        WandMaterial named = WandMaterial.named(wand.text("material"));
        if (named != null) {
            return named;
        }
        return (wand.has("flexible") ? WandMaterial.NYLON : WandMaterial.STAINLESS).assumed();
    }

    List<Coupling> couplings(Fields wand, double lengthM, double outerM) {
        List<Coupling> couplings = new ArrayList<>();
        for (Fields c : wand.list("couplings")) {
            double at = c.si("from_tip");
            double outer = c.si("outer_diameter", outerM);
            if (at > lengthM) {
                problems.add(
                        SceneProblem.COUPLING,
                        c.at("from_tip"),
                        "the coupling stands " + c.written("from_tip") + " from the tip of a wand of "
                                + wand.written("length") + "; a place on the wand is wanted");
            }
            if (outer < outerM) {
                problems.add(
                        SceneProblem.COUPLING,
                        c.at("outer_diameter"),
                        "the coupling (" + c.written("outer_diameter") + ") is thinner than the tube that it holds ("
                                + wand.written("outer_diameter") + ")");
            }
            couplings.add(new Coupling(at, outer, c.si("length")));
        }
        return couplings;
    }

    /** Diameter and length of the tip, {m, m}. */
    double[] tip(@Nullable Fields tip, double lengthM, double outerM, double boreM) {
        double outer = tip == null ? outerM : tip.si("outer_diameter", outerM);
        double length = tip == null ? 0 : tip.si("length", outer > outerM ? 2 * outer : 0);
        if (tip != null && tip.has("outer_diameter") && outer <= boreM) {
            problems.add(
                    SceneProblem.TIP_THIN,
                    tip.at("outer_diameter"),
                    "the tip (" + tip.written("outer_diameter") + ") is no thicker than the bore that it closes ("
                            + Quantities.length(boreM) + ")");
        }
        if (tip != null && length > lengthM) {
            problems.add(
                    SceneProblem.TIP_LONG,
                    tip.at("length"),
                    "the tip is longer (" + Quantities.length(length) + ") than the whole wand ("
                            + Quantities.length(lengthM) + ")");
        }
        return new double[] {outer, length};
    }
}
