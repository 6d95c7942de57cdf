package baymist.scene.io;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.scene.DropletSpec;
import baymist.scene.SupplySpec;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a scene may state about supply and droplets, and what the reader makes of it. */
class SupplyFormatTest {
    private static final Path WHOLE = Path.of("src/test/resources/broken/feed-without-pressure.yaml");

    @TempDir
    Path folder;

    private SupplySpec supply(String text) throws IOException {
        String scene = Files.readString(WHOLE).replaceFirst("supply: .*", "supply: {" + text + "}");
        return SceneReader.read(Files.writeString(folder.resolve("scene.yaml"), scene))
                .supply();
    }

    private DropletSpec droplets(String text) throws IOException {
        return supply("pressure: 80 psi, liquid: 25 mL/min, droplets: {" + text + "}")
                .droplets();
    }

    @Test
    void aDataSheetsFiguresAreRead() throws IOException {
        DropletSpec d = droplets("sheet: {dv10: 12 um, dv50: 30 um, dv90: 55 um}");
        assertEquals(new DropletSpec.Sheet(12e-6, 30e-6, 55e-6), d);
        assertEquals(DropletSpec.USUAL_FACTOR, d.dv50Factor());
    }

    @Test
    void aSettingAndAnUncertaintyWrapTheSizes() throws IOException {
        DropletSpec.RosinRammler rr = new DropletSpec.RosinRammler(30e-6, 2);
        String sizes = "rosin_rammler: {dv50: 30 um, spread: 2}";
        assertEquals(rr, droplets(sizes));
        assertEquals(new DropletSpec.Adjusted(rr, Math.sqrt(0.5), 1.3), droplets(sizes + ", setting: finer"));
        assertEquals(new DropletSpec.Adjusted(rr, Math.sqrt(2), 1.3), droplets(sizes + ", setting: coarser"));
        assertEquals(new DropletSpec.Adjusted(rr, 0.8, 1.5), droplets(sizes + ", setting: 0.8, dv50_within: 1.5"));
        assertEquals(new DropletSpec.Adjusted(rr, 1, 1), droplets(sizes + ", dv50_within: 1"));
    }

    @Test
    void aCorrelationIsRefusedOutsideItsRangeUnlessTold() throws IOException {
        DropletSpec.Correlation c =
                assertInstanceOf(DropletSpec.Correlation.class, droplets("correlation: {form: rizk_lefebvre}"));
        assertEquals(DropletSpec.Correlation.Form.RIZK_LEFEBVRE, c.form());
        assertEquals(2, c.spread());
        assertTrue(!c.outsideRange());
        DropletSpec.Correlation told = assertInstanceOf(
                DropletSpec.Correlation.class,
                droplets("correlation: {form: nukiyama_tanasawa, spread: 2.4, outside_range: allow}"));
        assertTrue(told.outsideRange());
    }

    @Test
    void aCatchCupAsSprayedIsTheRateAndNothingMore() throws IOException {
        SupplySpec.Pressure p = (SupplySpec.Pressure)
                supply(
                        "pressure: 80 psi, catch_cup: {volume: 30 mL, time: 30 s}, droplets: {rosin_rammler: {dv50: 30 um, spread: 2}}");
        assertTrue(p.cups().isEmpty());
        assertNull(p.feed());
        assertEquals(1e-6 * 880, p.liquidKgPerS(), 1e-12);
    }

    @Test
    void testsAtOtherPressuresAndBoresAreKeptForTheFit() throws IOException {
        SupplySpec.Pressure p = (SupplySpec.Pressure) supply("pressure: 80 psi, feed: {air_bore: 4 mm, length: 3 m},"
                + " catch_cup: [{volume: 30 mL, time: 30 s, pressure: 2 bar}, {volume: 20 mL, time: 30 s, length: 1 m, bore: 1.5 mm}],"
                + " droplets: {rosin_rammler: {dv50: 30 um, spread: 2}}");
        assertEquals(2, p.cups().size());
        assertEquals(2e5, p.cups().get(0).gaugePa(), 1e-6);
        assertEquals(0, p.cups().get(0).lengthM());
        assertEquals(p.gaugePa(), p.cups().get(1).gaugePa());
        assertEquals(1.5e-3, p.cups().get(1).boreM(), 1e-12);
        assertNotNull(p.feed());
        assertEquals(new SupplySpec.Feed(4e-3, 3, 0.024), p.feed());
        assertEquals(p.cups().get(0).liquidKgPerS(), p.liquidKgPerS());
    }
}
