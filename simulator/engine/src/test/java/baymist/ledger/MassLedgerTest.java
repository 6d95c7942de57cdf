package baymist.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.problem.SimulationException;
import java.math.BigDecimal;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class MassLedgerTest {
    @Test
    void accountsAddUpToWhatWasSprayed() {
        MassLedger ledger = MassLedger.builder()
                .sprayed(0.2)
                .sprayed(0.05)
                .film(0.15)
                .airborne(0.01)
                .overspray(0.04)
                .dripped(0.03)
                .masked(0.02)
                .build();
        assertEquals(0.25, ledger.accountedKg(), 1e-16);
        assertEquals(0, ledger.closure(), 1e-15);
        assertSame(ledger, ledger.requireClosed(1e-12));
        assertTrue(ledger.toString().contains("film 0.15"), ledger.toString());
    }

    @Test
    void missingMassIsRefusedWithAllTerms() {
        MassLedger ledger = MassLedger.builder().sprayed(1).film(0.999).build();
        assertEquals(-1e-3, ledger.closure(), 1e-12);
        String message = assertThrows(SimulationException.class, () -> ledger.requireClosed(1e-9))
                .getMessage();
        assertTrue(message.contains("film 0.999"), message);
        assertSame(ledger, ledger.requireClosed(2e-3));
    }

    @Test
    void massFromNowhereIsRefused() {
        assertThrows(
                SimulationException.class,
                () -> MassLedger.builder().film(1e-9).build().requireClosed(1));
        assertEquals(0, MassLedger.builder().build().requireClosed(0).closure());
        MassLedger negative = new MassLedger(1, 2, -1, 0, 0, 0);
        assertThrows(SimulationException.class, () -> negative.requireClosed(1e-9));
        assertThrows(SimulationException.class, () -> MassLedger.builder().masked(Double.NaN));
        assertThrows(SimulationException.class, () -> MassLedger.builder().dripped(-1e-12));
    }

    // Neumaier (1974): error of one rounding whatever the number of terms; judged against decimal arithmetic.
    @Test
    void aMillionSmallPiecesSumExactly() {
        SplittableRandom random = new SplittableRandom(7);
        MassLedger.Builder builder = MassLedger.builder();
        BigDecimal exact = BigDecimal.ZERO;
        for (int i = 0; i < 200_000; i++) {
            double kg = random.nextDouble() * (i % 1000 == 0 ? 1 : 1e-12);
            builder.overspray(kg);
            exact = exact.add(new BigDecimal(kg));
        }
        assertEquals(exact.doubleValue(), builder.build().oversprayKg());
    }
}
