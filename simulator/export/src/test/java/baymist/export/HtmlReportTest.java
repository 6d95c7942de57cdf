package baymist.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.report.Cautions;
import baymist.run.RunResult;
import java.io.IOException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class HtmlReportTest {
    /** W3C, Content Security Policy Level 3: default-src 'none' forbids every fetch that no other directive allows. */
    @Test
    void thePageForbidsItselfTheNetwork() throws IOException {
        String page = HtmlReport.of(QuickRun.get().result());
        Matcher policy = Pattern.compile("Content-Security-Policy\" content=\"([^\"]*)\"")
                .matcher(page);
        assertTrue(policy.find());
        assertTrue(policy.group(1).startsWith("default-src 'none'"));
        assertFalse(policy.group(1).contains("http"));
        assertFalse(Pattern.compile("(src|href)\\s*=\\s*[\"']?(https?:|//)")
                .matcher(page)
                .find());
    }

    @Test
    void cautionsComeBeforeAnyFilm() throws IOException {
        RunResult r = QuickRun.get().result();
        String page = HtmlReport.of(r);
        for (String caution : Cautions.of(r)) {
            assertTrue(page.contains(Html.text(caution)), caution);
        }
        assertTrue(page.indexOf("id=\"cautions\"") < page.indexOf("id=\"stage\""));
    }

    /** Condition of the MIT licence: the notice is included in all copies. */
    @Test
    void theLibrarysNoticeTravelsWithIt() throws IOException {
        String page = HtmlReport.of(QuickRun.get().result());
        assertTrue(page.contains("The above copyright notice and this permission notice shall be included in"));
        assertTrue(page.contains("three.js authors"));
    }

    @Test
    void wordsOfASceneAreNoMarkup() throws IOException {
        assertEquals("&lt;b&gt; &amp; &quot;", Html.text("<b> & \""));
        String page = HtmlReport.of(QuickRun.get().result());
        assertTrue(page.contains("<h1>Elevator in two passes &lt;coarse &amp; quick&gt;</h1>"));
        assertFalse(page.contains("<coarse"));
    }

    @Test
    void theSameResultGivesTheSamePage() throws IOException {
        RunResult r = QuickRun.get().result();
        assertEquals(HtmlReport.of(r), HtmlReport.of(r));
    }

    @Test
    void quantitiesReadWell() {
        assertEquals("350 cm\u00b2", Html.area(0.035));
        assertEquals("0.863 m\u00b2", Html.area(0.8629));
        assertEquals("below 0.1 \u00b5m", Html.film(1e-8));
        assertEquals("2.5 \u00b5m", Html.film(2.5e-6));
        assertEquals("17 \u00b5m", Html.film(16.8e-6));
        assertEquals("7.81 m", Html.length(7.811));
        assertEquals("300 mm", Html.length(0.3));
        assertEquals("12.81 g", Html.mass(0.01281));
        assertEquals("16.9 mg", Html.mass(16.93e-6));
        assertEquals("1", Html.plain(1));
        assertEquals("50", Html.plain(50.000001));
        assertEquals("0.25", Html.plain(0.25));
        assertEquals("-", Html.percent(Double.NaN));
    }
}
