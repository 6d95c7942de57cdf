package baymist.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.scene.TargetSpec;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ColourTest {
    /** Table of XYZ and OKLab pairs in B. Ottosson, "A perceptual color space for image processing" (2020), from memory. */
    @ParameterizedTest
    @CsvSource({
        "0.950, 1.000, 1.089, 1.000, 0.000, 0.000",
        "1.000, 0.000, 0.000, 0.450, 1.236, -0.019",
        "0.000, 1.000, 0.000, 0.922, -0.671, 0.263",
        "0.000, 0.000, 1.000, 0.153, -1.415, -0.449"
    })
    void xyzPairsOfThePublishedTableAgree(double x, double y, double z, double l, double a, double b) {
        OkLab found = OkLab.ofXyz(x, y, z);
        assertEquals(l, found.l(), 1e-3);
        assertEquals(a, found.a(), 1e-3);
        assertEquals(b, found.b(), 1e-3);
    }

    /** CSS Color 4 (W3C), sample conversions of sRGB red, green and blue to OKLab (from memory, three digits). */
    @ParameterizedTest
    @CsvSource({
        "1, 0, 0, 0.628, 0.225, 0.126",
        "0, 1, 0, 0.866, -0.234, 0.179",
        "0, 0, 1, 0.452, -0.032, -0.312",
        "1, 1, 1, 1.000, 0.000, 0.000"
    })
    void srgbPrimariesAgree(double r, double g, double bl, double l, double a, double b) {
        OkLab found = OkLab.ofSrgb(r, g, bl);
        assertEquals(l, found.l(), 1e-3);
        assertEquals(a, found.a(), 1e-3);
        assertEquals(b, found.b(), 1e-3);
    }

    /** IEC 61966-2-1 (1999): the middle grey of 0.5 in sRGB is 0.2140 of full light (from memory). */
    @Test
    void transferCurveIsThatOfSrgbAndTurnsBack() {
        assertEquals(0.21404, OkLab.linear(0.5), 1e-5);
        for (double c = 0; c <= 1; c += 0.05) {
            assertEquals(c, OkLab.companded(OkLab.linear(c)), 1e-12);
            double[] back = OkLab.ofSrgb(c, 0.3, 1 - c).toSrgb();
            assertEquals(c, back[0], 1e-6);
            assertEquals(0.3, back[1], 1e-6);
        }
    }

    @Test
    void filmColoursAreEvenlySpacedAndFallInLightness() {
        int steps = 64;
        double first = FilmColours.colour(0).distance(FilmColours.colour(1.0 / steps));
        for (int i = 1; i < steps; i++) {
            OkLab a = FilmColours.colour((double) i / steps);
            OkLab b = FilmColours.colour((i + 1.0) / steps);
            assertEquals(first, a.distance(b), 0.05 * first, "step " + i);
            assertTrue(b.l() < a.l());
        }
    }

    @Test
    void filmColoursCanAllBeShown() {
        for (int i = 0; i <= 100; i++) {
            for (double c : FilmColours.colour(i / 100.0).toSrgb()) {
                assertTrue(c > -0.004 && c < 1.004, "colour " + i + " has a channel of " + c);
            }
        }
    }

    /**
     * Viénot, Brettel & Mollon (1999), "Digital video colourmaps for checking the legibility of displays by dichromats",
     * projection matrices for protanopes and deuteranopes in linear RGB (from memory): order stays readable.
     */
    @Test
    void orderOfFilmSurvivesDichromaticEyes() {
        double[][] protan = {{0.11238, 0.88762, 0}, {0.11238, 0.88762, 0}, {0.00401, -0.00401, 1}};
        double[][] deutan = {{0.29275, 0.70725, 0}, {0.29275, 0.70725, 0}, {-0.02234, 0.02234, 1}};
        for (double[][] m : List.of(protan, deutan)) {
            List<OkLab> seen = new ArrayList<>();
            for (int i = 0; i <= 20; i++) {
                double[] c = FilmColours.colour(i / 20.0).toSrgb();
                double[] lin = {OkLab.linear(c[0]), OkLab.linear(c[1]), OkLab.linear(c[2])};
                double[] out = new double[3];
                for (int k = 0; k < 3; k++) {
                    double v = m[k][0] * lin[0] + m[k][1] * lin[1] + m[k][2] * lin[2];
                    out[k] = OkLab.companded(Math.min(1, Math.max(0, v)));
                }
                seen.add(OkLab.ofSrgb(out[0], out[1], out[2]));
            }
            for (int i = 1; i < seen.size(); i++) {
                assertTrue(seen.get(i).l() < seen.get(i - 1).l() - 0.01, "step " + i);
            }
        }
    }

    @Test
    void scaleIsLogarithmicFromHazeToTwiceTheExcessLimit() {
        FilmColours c = new FilmColours(TargetSpec.DEFAULT);
        assertEquals(0, c.place(0));
        assertEquals(0, c.place(1e-6), 1e-12);
        assertEquals(0.5, c.place(10e-6), 1e-12); // the geometric mean of 1 and 100 um
        assertEquals(1, c.place(100e-6), 1e-12);
        assertEquals(1, c.place(1));
        assertEquals(FilmColours.colour(0.5).toRgb(), c.rgb(10e-6));
    }
}
