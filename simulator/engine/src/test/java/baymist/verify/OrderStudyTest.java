package baymist.verify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OrderStudyTest {
    @Test
    void everyOperatorHasTheOrderThatItClaims() {
        for (OrderStudy.Row r : OrderStudy.run()) {
            assertTrue(r.asClaimed(), r.name() + ": " + r.order() + " claimed " + r.claimed());
            for (int i = 1; i < r.error().length; i++) {
                assertTrue(r.error()[i] < r.error()[i - 1], r.name());
            }
        }
    }

    @Test
    void theFolderHoldsTablesAndPlots(@TempDir Path folder) throws Exception {
        VerificationCase c = new VerificationCase(
                "a <b>", "fog", "q", Inputs.parse("", folder), 2, 0.01, false, "exact", "s", "seen");
        VerificationReport report = new VerificationReport(
                List.of(new Outcome(c, 2.001, ""), new Outcome(c, Double.NaN, "it broke"), new Outcome(c, 2, "")));
        OrderStudy.Row good = new OrderStudy.Row("good", 2, new int[] {10, 20}, new double[] {4e-2, 1e-2});
        OrderStudy.Row bad = new OrderStudy.Row("bad", 2, new int[] {10, 20}, new double[] {4e-2, 2e-2});
        assertEquals(2, good.order(), 1e-12);
        assertTrue(good.asClaimed());
        assertFalse(bad.asClaimed());
        ValidationFolder.write(folder, report, List.of(good, bad));
        assertTrue(Files.readString(folder.resolve("cases.md")).contains("| fog | 3 |"));
        String errors = Files.readString(folder.resolve("errors.svg"));
        assertTrue(errors.contains("a &lt;b&gt;") && errors.contains("#d00000") && errors.endsWith("</svg>\n"), errors);
        assertTrue(Files.readString(folder.resolve("order.md")).contains("| **1.00** | 2 |"));
        assertTrue(Files.readString(folder.resolve("order.svg")).contains("order 2.00, claimed 2"));
    }
}
