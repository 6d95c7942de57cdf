package baymist.cavity;

import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.scene.BodySpec;
import baymist.scene.ProtectedItem;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Puts protected items into a model: bodies as closed sheets of their own, named parts by marking them. */
final class ItemSheets {
    /** An item is no sheet; its skin gets the thinnest gauge that means nothing, m. */
    private static final double GAUGE_M = 1e-6;

    private ItemSheets() {}

    static void add(SheetModel model, List<ProtectedItem> items, @Nullable Vec3 inside) {
        if (items.isEmpty()) {
            return;
        }
        SpecCheck check = new SpecCheck(items.get(0).place());
        Box3 box = model.mesh().bounds();
        for (ProtectedItem item : items) {
            BodySpec body = item.body();
            if (body == null) {
                mark(model, item, check);
            } else if (mayStand(model, item, body, box, inside, check)) {
                BodySheets.add(model, model.part(item.name(), PartKind.PROTECTED, GAUGE_M), body);
            }
        }
        check.orThrow();
    }

    private static void mark(SheetModel model, ProtectedItem item, SpecCheck check) {
        List<String> names = model.parts.stream().map(Part::name).toList();
        int part = Names.find(item.partName(), names);
        if (part < 0) {
            check.error(
                    "CAV-061",
                    item.place(),
                    "protected item '" + item.name() + "': " + Names.unknown("part", item.partName(), names));
            return;
        }
        Part was = model.parts.get(part);
        if (was.kind() == PartKind.PROTECTED) {
            check.error(
                    "CAV-062",
                    item.place(),
                    "protected item '" + item.name() + "' names part '" + was.name()
                            + "', which another item names already; a part is one item");
        }
        model.parts.set(part, new Part(was.name(), PartKind.PROTECTED, was.gaugeM()));
    }

    private static boolean mayStand(
            SheetModel model, ProtectedItem item, BodySpec body, Box3 box, @Nullable Vec3 inside, SpecCheck check) {
        if (model.parts.stream().anyMatch(p -> p.name().equals(item.name()))) {
            check.error(
                    "CAV-062",
                    item.place(),
                    "protected item '" + item.name() + "' has the name of a part; give it a name of its own");
            return false;
        }
        Box3 own = BodySheets.bounds(body);
        for (int axis = 0; axis < 3; axis++) {
            if (own.min().get(axis) < box.min().get(axis)
                    || own.max().get(axis) > box.max().get(axis)) {
                check.error(
                        "CAV-063",
                        item.place(),
                        "protected item '" + item.name() + "' reaches out of the structure, from "
                                + SpecCheck.at(own.min())
                                + " to " + SpecCheck.at(own.max()) + "; the structure goes from "
                                + SpecCheck.at(box.min()) + " to " + SpecCheck.at(box.max()));
                return false;
            }
        }
        if (inside != null && body.distanceM(inside) == 0) {
            check.error(
                    "CAV-064",
                    item.place(),
                    "protected item '" + item.name() + "' covers the inside point " + SpecCheck.at(inside)
                            + "; state one in the air");
            return false;
        }
        return true;
    }
}
