package baymist.report;

import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.run.CheckResult;
import baymist.run.MemoryEstimate;
import baymist.voxel.FinerVoxels;
import baymist.voxel.UnresolvedArea;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Which surface the voxels can't hold, where it lies, why, and which size would hold it. */
final class UnresolvedText {
    private static final int PLACES = 12;

    private UnresolvedText() {}

    /** Unresolved area of one part for one cause. */
    private static final class Group {
        final UnresolvedArea first;
        double areaM2;
        double leastM = Double.POSITIVE_INFINITY;
        double mostM;
        Box3 places = Box3.EMPTY;

        Group(UnresolvedArea first) {
            this.first = first;
        }

        void add(UnresolvedArea u) {
            areaM2 += u.areaM2();
            leastM = Math.min(leastM, u.spanM());
            mostM = Math.max(mostM, u.spanM());
            places = places.including(u.centroidM());
        }
    }

    static void write(Page page, CheckResult c) {
        VoxelGrid g = c.grid();
        double hidden = g.unresolvedAreaM2();
        if (hidden <= 0) {
            page.line("Every part of the inside surface is resolved by the voxels.");
            return;
        }
        page.heading("Surface too narrow for the voxels");
        double resolved = CheckAreas.resolvedM2(g);
        page.line(
                "%s, %s of the inside surface, gets no verdict; %s is on the voxels.",
                TextReport.area(hidden), TextReport.percent(hidden / (hidden + resolved)), TextReport.area(resolved));
        List<Group> groups = groups(g);
        for (Group group : groups.subList(0, Math.min(PLACES, groups.size()))) {
            String lead = String.format(Locale.ROOT, "%11s  ", TextReport.area(group.areaM2));
            page.wrapped(
                    lead, c.cavity().parts().get(group.first.part()).name() + ": " + why(group) + ", " + where(group));
        }
        if (groups.size() > PLACES) {
            page.line("  and %d more (all places with --json)", groups.size() - PLACES);
        }
        advice(page, c);
    }

    private static List<Group> groups(VoxelGrid g) {
        Map<String, Group> groups = new LinkedHashMap<>();
        for (UnresolvedArea u : g.unresolved()) {
            groups.computeIfAbsent(u.part() + ":" + u.cause() + ":" + u.axis(), k -> new Group(u))
                    .add(u);
        }
        List<Group> sorted = new ArrayList<>(groups.values());
        sorted.sort(Comparator.comparingDouble(x -> -x.areaM2));
        return sorted;
    }

    private static String why(Group group) {
        UnresolvedArea u = group.first;
        String along = u.axis() < 0 ? "" : " along " + "xyz".charAt(u.axis());
        return switch (u.cause()) {
            case LAP -> "another part lies on it, which no voxel size shows";
            case SMALL -> "narrower than the voxels" + along;
            case NARROW ->
                u.axis() < 0
                        ? "sheets closer than the voxels"
                        : "sheets " + range(1e3 * group.leastM, 1e3 * group.mostM, true) + " mm apart" + along;
        };
    }

    private static String where(Group group) {
        Vec3 a = group.places.min().times(1e3);
        Vec3 b = group.places.max().times(1e3);
        return "x " + range(a.x(), b.x(), false) + ", y " + range(a.y(), b.y(), false) + ", z "
                + range(a.z(), b.z(), false) + " mm";
    }

    private static String range(double low, double high, boolean fine) {
        String a = fine ? TextReport.significant(low, 3) : Long.toString(Math.round(low));
        String b = fine ? TextReport.significant(high, 3) : Long.toString(Math.round(high));
        return a.equals(b) ? a : a + " to " + b;
    }

    private static void advice(Page page, CheckResult c) {
        VoxelGrid g = c.grid();
        double laps = FinerVoxels.lapsM2(g);
        if (laps > 0) {
            page.line("%s of it lies in laps: between sheets that lie on each other.", TextReport.area(laps));
        }
        double perCell = MemoryEstimate.of(g, c.scene().sizeBins()).totalBytes() / (double) g.cellCount();
        String before = "";
        for (double share : new double[] {0.5, 0.9}) {
            FinerVoxels finer = FinerVoxels.of(g, share);
            String size = size(finer);
            if (finer.share() > 0 && !size.equals(before)) {
                page.wrapped(
                        "-> ",
                        String.format(
                                Locale.ROOT,
                                "--voxel \"%s\" would hold %s of it: some %d cells, %s.",
                                size,
                                finer.share() > 0.9995 ? "all" : "about " + TextReport.percent(finer.share()),
                                finer.cells(),
                                CheckReport.bytes(Math.round(perCell * finer.cells()))));
            }
            before = size;
        }
    }

    /** A size as the command line takes it, rounded down so that it still holds. */
    static String size(FinerVoxels finer) {
        return TextReport.millimetresDown(finer.size().xM()) + " mm x "
                + TextReport.millimetresDown(finer.size().yM()) + " mm x "
                + TextReport.millimetresDown(finer.size().zM()) + " mm";
    }
}
