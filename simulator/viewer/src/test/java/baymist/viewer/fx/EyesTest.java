package baymist.viewer.fx;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.viewer.draw.FilmPlaces;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javafx.scene.paint.Color;
import org.junit.jupiter.api.Test;

/** What colour-blind eyes and weak ones see of the colours. Needs no window. */
class EyesTest {
    /**
     * Linear RGB as seen without one kind of cone: Machado, Oliveira and Fernandes, A physiologically-based model for simulation of
     * color vision deficiency, IEEE Trans. Visualization and Computer Graphics 15 (2009) 1291, their matrices of severity 1.0.
     */
    private static final Map<String, double[]> EYES = Map.of(
            "usual", new double[] {1, 0, 0, 0, 1, 0, 0, 0, 1},
            "protan",
                    new double[] {
                        0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998
                    },
            "deutan",
                    new double[] {
                        0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881
                    },
            "tritan",
                    new double[] {
                        1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900
                    });

    /** Transfer function of IEC 61966-2-1 (sRGB). */
    private static double linear(int c255) {
        double c = c255 / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }

    private static double[] linear(String eye, int rgb) {
        double[] in = {linear(rgb >> 16 & 255), linear(rgb >> 8 & 255), linear(rgb & 255)};
        double[] m = EYES.get(eye);
        double[] out = new double[3];
        for (int r = 0; r < 3; r++) {
            double v = m[3 * r] * in[0] + m[3 * r + 1] * in[1] + m[3 * r + 2] * in[2];
            out[r] = Math.max(0, Math.min(1, v));
        }
        return out;
    }

    private static double luminance(double[] rgb) {
        return 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2];
    }

    /** CIE 1976 lightness, 0..100 (ISO/CIE 11664-4). */
    private static double lightness(double y) {
        return y > 216.0 / 24389 ? 116 * Math.cbrt(y) - 16 : 24389.0 / 27 * y;
    }

    /** Grey has no colour to lose: the rows of each matrix add up to one. */
    @Test
    void greysLookAlikeToAllEyes() {
        EYES.forEach((eye, m) -> {
            for (int r = 0; r < 3; r++) {
                assertEquals(1, m[3 * r] + m[3 * r + 1] + m[3 * r + 2], 2e-6, eye);
            }
        });
    }

    @Test
    void filmColoursGetDarkerAllTheWayForEveryEye() {
        int[] line = FilmPlaces.line(0);
        for (String eye : EYES.keySet()) {
            double first = lightness(luminance(linear(eye, line[FilmPlaces.BARE])));
            double last = lightness(luminance(linear(eye, line[FilmPlaces.COLOURS - 1])));
            assertTrue(first - last > 55, eye + ": from " + first + " to " + last);
            // over a sixteenth of the scale, some tenfold what rounding to 255 steps can hide
            int step = (FilmPlaces.COLOURS - FilmPlaces.BARE) / 16;
            for (int i = FilmPlaces.BARE; i + step < FilmPlaces.COLOURS; i++) {
                double here = lightness(luminance(linear(eye, line[i])));
                double there = lightness(luminance(linear(eye, line[i + step])));
                assertTrue(here - there > 2, eye + " at " + i + ": " + here + " to " + there);
            }
        }
    }

    /** WCAG 2.1, contrast ratio: (L1 + 0.05) / (L2 + 0.05). */
    private static double contrast(Color a, Color b) {
        double la = luminance(linear("usual", rgb(a)));
        double lb = luminance(linear("usual", rgb(b)));
        return (Math.max(la, lb) + 0.05) / (Math.min(la, lb) + 0.05);
    }

    private static int rgb(Color c) {
        return (int) Math.round(255 * c.getRed()) << 16
                | (int) Math.round(255 * c.getGreen()) << 8
                | (int) Math.round(255 * c.getBlue());
    }

    @Test
    void blackOnWhiteIsTheLargestContrast() {
        assertEquals(21, contrast(Color.BLACK, Color.WHITE), 1e-9);
    }

    private static Map<String, Color> sheet(String name) throws IOException {
        Map<String, Color> colours = new HashMap<>();
        try (var in = EyesTest.class.getResourceAsStream(name)) {
            assertNotNull(in, name);
            String css = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            Matcher m =
                    Pattern.compile("(-[\\w-]+):\\s*(#[0-9a-fA-F]{6,8})\\s*;").matcher(css);
            while (m.find()) {
                colours.put(m.group(1), Color.web(m.group(2)));
            }
        }
        return colours;
    }

    /** One colour over another that it lets through. */
    private static Color over(Color top, Color below) {
        return below.interpolate(Color.color(top.getRed(), top.getGreen(), top.getBlue()), top.getOpacity());
    }

    /** WCAG 2.1, success criterion 1.4.3: lettering has a contrast of 4.5 to 1 at least. */
    @Test
    void letteringCanBeReadInLightAndInDark() throws IOException {
        int pairs = 0;
        for (Theme theme : new Theme[] {Theme.LIGHT, Theme.DARK}) {
            Map<String, Color> css = sheet(theme.dark() ? "dark.css" : "light.css");
            assertTrue(contrast(theme.text(), theme.ground()) >= 4.5);
            assertTrue(contrast(theme.text(), css.get("-fx-control-inner-background")) >= 4.5);
            Color ink = css.get("-bm-ink");
            Color paper = css.get("-bm-paper");
            Color[] grounds = {
                css.get("-fx-background"),
                css.get("-bm-notice"),
                over(paper, theme.ground()),
                over(paper, theme.bare()),
                // a name may lie on film, the palest and the darkest
                over(paper, web(FilmPlaces.line(0)[FilmPlaces.BARE])),
                over(paper, web(FilmPlaces.line(0)[FilmPlaces.COLOURS - 1]))
            };
            for (Color ground : grounds) {
                assertTrue(contrast(ink, ground) >= 4.5, theme.dark() + " " + ink + " on " + ground);
                pairs++;
            }
        }
        assertEquals(12, pairs);
    }

    private static Color web(int rgb) {
        return Color.rgb(rgb >> 16 & 255, rgb >> 8 & 255, rgb & 255);
    }

    /** WCAG 2.1, success criterion 1.4.11: what has to be seen has a contrast of 3 to 1 with what is beside it. */
    @Test
    void linesCanBeSeenOnTheirGround() {
        for (Theme theme : new Theme[] {Theme.LIGHT, Theme.DARK}) {
            for (Color line : new Color[] {theme.edge(), theme.outline(), theme.seam(), theme.wand()}) {
                assertTrue(contrast(line, theme.ground()) >= 3, theme.dark() + " " + line);
            }
        }
    }
}
