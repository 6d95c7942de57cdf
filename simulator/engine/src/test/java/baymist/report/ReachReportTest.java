package baymist.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.access.WandReach;
import baymist.access.WandStop;
import baymist.geom.Vec3;
import baymist.run.ReachLine;
import baymist.run.ReachOptions;
import baymist.run.ReachResult;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.Simulation;
import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A box 400 x 600 x 150 mm with a No. 30 hole, a half inch hole and a slot in its left wall: reach is plane geometry. */
class ReachReportTest {
    private static ReachResult rods;
    private static JsonNode json;

    @BeforeAll
    static void lookIntoTheBox() throws IOException {
        Scene scene = SceneReader.read(Path.of("../../scenes/verification/access/rods.yaml"));
        rods = Simulation.reach(scene, ReachOptions.DEFAULT, new RunOptions(2), RunObserver.NONE);
        json = tree(rods);
    }

    private static JsonNode tree(ReachResult r) throws IOException {
        StringWriter out = new StringWriter();
        ReachReport.json(r, out);
        return new ObjectMapper().readTree(out.toString());
    }

    private static JsonNode insertion(String entry, String wand) {
        for (JsonNode i : json.get("insertions")) {
            if (i.get("entry").asText().equals(entry) && i.get("wand").asText().equals(wand)) {
                return i;
            }
        }
        throw new AssertionError("no insertion of " + wand + " at " + entry);
    }

    private static List<String> keys(JsonNode n) {
        List<String> keys = new ArrayList<>();
        n.fieldNames().forEachRemaining(keys::add);
        return keys;
    }

    @Test
    void onlyAnEndThatCanBeFeltIsPushedAgainst() {
        ReachLine line = rods.lines().stream()
                .filter(l -> l.reach().feasible())
                .findFirst()
                .orElseThrow();
        String felt = ReachWords.of(endingAt(line, "the nose meets rib 5"));
        assertTrue(felt.contains("the nose meets rib 5. Push until you feel it"), felt);
        String open = ReachWords.of(endingAt(line, "it would leave the cavity again by 'slot'"));
        assertTrue(open.contains("again by 'slot'. You will not feel that end: mark the depth"), open);
        assertFalse(open.contains("Push"), open);
    }

    @Test
    void aSearchThatItsBudgetEndedSaysThatThereMayBeMore() {
        ReachLine l = rods.lines().stream()
                .filter(x -> x.reach().feasible())
                .findFirst()
                .orElseThrow();
        ReachLine cut = new ReachLine(
                l.entry(),
                l.wand(),
                l.openingIndex(),
                l.opened(),
                l.reach().incomplete(),
                l.sag(),
                l.places(),
                l.share(),
                l.bays());
        assertTrue(ReachWords.of(cut).contains(ReachWords.UNFINISHED), ReachWords.of(cut));
        assertFalse(ReachWords.of(l).contains("budget"), ReachWords.of(l));
    }

    @Test
    void aFlexibleWandTellsItsWaysRoundTheBend() throws IOException {
        Scene sill = SceneReader.read(Path.of("../../scenes/sill-flexible.yaml"));
        ReachResult r = Simulation.reach(sill, ReachOptions.DEFAULT, new RunOptions(2), RunObserver.NONE);
        JsonNode ways = tree(r).get("insertions").get(0).get("ways");
        assertTrue(ways.size() > 1, ways.toString());
        for (int i = 1; i < ways.size(); i++) {
            assertTrue(ways.get(i - 1).get("depthM").asDouble()
                    >= ways.get(i).get("depthM").asDouble());
            assertFalse(ways.get(i).get("through").equals(ways.get(0).get("through")));
        }
        // past both baffles, by a hole in each
        assertEquals(2, ways.get(0).get("through").size());
        String words = ReachWords.of(r.lines().get(0));
        assertTrue(words.contains("It passes 'baffle 1 "), words);
        assertTrue(words.contains("Other ways: "), words);
    }

    private static ReachLine endingAt(ReachLine l, String why) {
        WandReach r = l.reach();
        WandStop stop = new WandStop("somewhere", Vec3.ZERO, 0, why);
        double depth = 0.5 * l.wand().lengthM();
        WandReach other = new WandReach(r.entry(), r.wand(), true, 0, depth, stop, r.tips(), r.resolutionM(), true);
        return new ReachLine(
                l.entry(), l.wand(), l.openingIndex(), l.opened(), other, l.sag(), l.places(), l.share(), l.bays());
    }

    @Test
    void everyEntryMeetsEveryWandOnce() {
        assertEquals(5 * 4, json.get("insertions").size());
        assertEquals(
                20,
                rods.lines().stream()
                        .map(l -> l.entry().name() + "/" + l.wand().name())
                        .distinct()
                        .count());
    }

    @Test
    void insertionsHaveTheKeysThatProgramsReadAndMore() {
        for (JsonNode i : json.get("insertions")) {
            assertTrue(
                    keys(i).containsAll(List.of("entry", "wand", "feasible", "depthM", "stoppedBy", "tips")),
                    keys(i).toString());
            assertEquals(List.of("min", "max"), keys(i.get("depthM")));
            assertTrue(i.get("feasible").isBoolean()
                    && i.get("stoppedBy").isTextual()
                    && i.get("tips").isArray());
            assertTrue(i.get("depthM").get("min").asDouble()
                    <= i.get("depthM").get("max").asDouble());
            assertEquals(i.get("feasible").asBoolean(), !i.get("tips").isEmpty());
        }
    }

    /** ASME B94.11M: No. 30 is 0.1285 in, so 1/8 in passes and 3/16 in does not. */
    @Test
    void eighthPassesANumberThirtyHoleAndThreeSixteenthsDoesNot() {
        JsonNode in = insertion("drilled", "eighth");
        assertTrue(in.get("feasible").asBoolean());
        // tilt allowed by D - d/cos - t tan >= 0 with t = 1 mm: below 0.09; the box is 600 mm wide
        double steepest = Math.hypot(1, 0.09);
        double depth = in.get("depthM").get("max").asDouble();
        assertTrue(depth >= 0.6 - 1e-6 && depth <= 0.6 * steepest, "depth " + depth);
        assertEquals("right wall", in.get("stoppedBy").asText());
        assertEquals(0.6, in.get("stop").get("placeM").get(1).asDouble(), 1e-6);
        JsonNode out = insertion("drilled", "three sixteenths");
        assertFalse(out.get("feasible").asBoolean());
        assertEquals(0, out.get("depthM").get("max").asDouble());
        // 3/16 in - 0.1285 in = 1.499 mm
        assertTrue(
                out.get("stoppedBy").asText().contains("1.499 mm"),
                out.get("stoppedBy").asText());
    }

    @Test
    void shortWandGoesInToItsLengthAndItsTipIsThatFarFromTheHole() {
        JsonNode in = insertion("straight", "short");
        assertEquals(0.25, in.get("depthM").get("max").asDouble(), 1e-9);
        assertEquals("wand length", in.get("stoppedBy").asText());
        for (JsonNode tip : in.get("tips")) {
            JsonNode p = tip.get("positionM");
            JsonNode body = tip.get("bodyM");
            JsonNode from = body.get(0);
            assertEquals(0, from.get(1).asDouble(), 1e-9);
            double length = vector(p).distance(vector(from));
            assertEquals(tip.get("depthM").asDouble(), length, 1e-9);
            assertTrue(length <= 0.25 + 1e-9);
            assertTrue(p.get(2).asDouble() > 0 && p.get(2).asDouble() < 0.15);
        }
    }

    /** Roark's table 8.1, 2a for the tube of the scene; the short wand touches nothing on its way down. */
    @Test
    void sagOfTheShortWandIsThatOfACantilever() {
        JsonNode sag = insertion("straight", "short").get("sag");
        double d = 6.35e-3;
        double b = 1e-3;
        double w = 9.80665 * Math.PI / 4 * (8000 * (d * d - b * b) + 880 * b * b);
        double stiffness = 193e9 * Math.PI / 64 * (Math.pow(d, 4) - Math.pow(b, 4));
        double level = w * Math.pow(0.25, 4) / (8 * stiffness);
        assertEquals(level, sag.get("dropM").asDouble(), 1e-6 * level);
        assertEquals(0.25, sag.get("straightTipM").get(1).asDouble(), 1e-12);
        assertEquals(0.075 - level, sag.get("tipM").get(2).asDouble(), 1e-9);
        assertEquals(0, sag.get("rests").size());
        assertFalse(sag.get("yields").asBoolean());
        assertTrue(sag.get("catchesOn").isNull());
    }

    /** Within 1 m everything in a 0.4 x 0.6 x 0.15 m box is near any tip and nothing hides it. */
    @Test
    void wholeOfASmallBoxIsNearAndAFarPartIsNot() throws IOException {
        Scene scene = SceneReader.read(Path.of("../../scenes/verification/access/rods.yaml"));
        ReachResult wide =
                Simulation.reach(scene, new ReachOptions(List.of(), false, 1), new RunOptions(1), RunObserver.NONE);
        assertEquals(1, wide.together().volume(), 1e-12);
        assertEquals(1, wide.together().surface(), 1e-12);
        JsonNode share = insertion("drilled", "eighth").get("share");
        // within 150 mm of a line 100 mm from one side in a box 400 mm wide: some (100 + 150)/400
        double s = share.get("volume").asDouble();
        assertTrue(s > 0.5 && s < 0.75, "share " + s);
        assertTrue(rods.together().volume() >= s);
    }

    @Test
    void textFitsTheColumnsAndSaysEachInsertionInWords() {
        String text = ReachReport.text(rods);
        for (String line : text.split("\n", -1)) {
            assertTrue(line.length() <= 100 && line.chars().allMatch(c -> c < 128), line);
        }
        assertTrue(text.contains("Entry: drilled") && text.contains("In words"), text);
        for (ReachLine l : rods.lines()) {
            String words = ReachWords.of(l);
            assertTrue(words.endsWith(".") && !words.contains("null") && !words.contains(".."), words);
            assertTrue(words.contains(l.entry().name()), words);
        }
    }

    @Test
    void wordsOfTheSampleTellDepthSagCatchAndYield() {
        List<ReachLine> lines = SampleRun.reach().lines();
        assertEquals(
                "Thin wand goes in at root to 800 mm, up to [85, 800, 0] mm: its nose meets rib 3. Push until you feel it, then"
                        + " draw back a little before you spray. Held in line at the entry, its tip hangs 12 mm off that line,"
                        + " towards 6 o'clock; it rests on the edge of 'lightening hole 2'. On the way in its nose comes 4.0 mm"
                        + " too low for the edge of 'lightening hole 3' at 800 mm: lower your hand outside to lift it through."
                        + " Its weight alone would bend it for good: support it, or take a stiffer wand.",
                ReachWords.of(lines.get(0)));
        assertEquals(
                "Thick wand does not go in at root: 'root port' is too small: it lacks 10.0 mm across. Take a thinner or"
                        + " shorter-bent wand, or a wider opening.",
                ReachWords.of(lines.get(1)));
    }

    @Test
    void clockIsSaidAsAHandWouldSayIt() {
        assertEquals("12 o'clock", ReachWords.clock(0));
        assertEquals("12 o'clock", ReachWords.clock(2 * Math.PI - 0.01));
        assertEquals("6 o'clock", ReachWords.clock(Math.PI));
        assertEquals("3 o'clock", ReachWords.clock(Math.PI / 2));
        assertEquals("half past 12", ReachWords.clock(Math.toRadians(15)));
        assertEquals("half past 7", ReachWords.clock(Math.toRadians(225)));
    }

    @Test
    void anyNumberOfThreadsGivesTheSameJson() throws IOException {
        ReachResult one = Simulation.reach(rods.scene(), ReachOptions.DEFAULT, new RunOptions(1), RunObserver.NONE);
        assertEquals(json, tree(one));
    }

    private static Vec3 vector(JsonNode n) {
        return new Vec3(n.get(0).asDouble(), n.get(1).asDouble(), n.get(2).asDouble());
    }
}
