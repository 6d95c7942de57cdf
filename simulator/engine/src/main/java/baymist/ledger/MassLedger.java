package baymist.ledger;

import baymist.problem.SimulationException;
import java.util.Locale;

/**
 * Where every kilogram went; each term is summed from its own field, none by difference.
 *
 * @param sprayedKg left the tip (plus fog present at the start)
 * @param filmKg on the structure
 * @param airborneKg still in the air of the cavity
 * @param oversprayKg left through openings with the air or straight from a jet
 * @param drippedKg fell off or drained out as liquid
 * @param maskedKg on tape, plugs and closed covers
 * @param beyondKg carried into bays that were not computed; 0 where every bay is
 * @param auditedKg rounding of steps in single precision that audits put right, of either sign, added up; in none of the sums, it says how far they could be off
 */
public record MassLedger(
        double sprayedKg,
        double filmKg,
        double airborneKg,
        double oversprayKg,
        double drippedKg,
        double maskedKg,
        double beyondKg,
        double auditedKg) {
    /** Most that audits may have put right, of what was sprayed. */
    public static final double MOST_AUDITED = 1e-6;

    /** Of a structure all of whose bays are computed, in double precision. */
    public MassLedger(
            double sprayedKg, double filmKg, double airborneKg, double oversprayKg, double drippedKg, double maskedKg) {
        this(sprayedKg, filmKg, airborneKg, oversprayKg, drippedKg, maskedKg, 0, 0);
    }

    /** Mass found at all destinations, kg. */
    public double accountedKg() {
        return filmKg + airborneKg + oversprayKg + drippedKg + maskedKg + beyondKg;
    }

    /** Relative closure error; 0 when nothing was sprayed. */
    public double closure() {
        return sprayedKg == 0 ? 0 : (accountedKg() - sprayedKg) / sprayedKg;
    }

    /** What audits put right, of what was sprayed; 0 when nothing was sprayed. */
    public double audited() {
        return sprayedKg == 0 ? 0 : auditedKg / sprayedKg;
    }

    /**
     * This ledger, if it closes.
     *
     * @param tolerance largest relative closure error; a run promises 1e-9
     * @throws SimulationException if the error is larger or not a number, if mass turns up although nothing was sprayed, or if a
     *     term is negative
     */
    public MassLedger requireClosed(double tolerance) {
        boolean empty = sprayedKg == 0 && accountedKg() == 0;
        boolean closed = sprayedKg > 0 && Math.abs(closure()) <= tolerance;
        double least = Math.min(
                Math.min(Math.min(filmKg, airborneKg), Math.min(oversprayKg, drippedKg)),
                Math.min(Math.min(maskedKg, beyondKg), sprayedKg));
        if (!(empty || closed) || !(least >= 0)) {
            throw new SimulationException("ledger: the mass does not add up to " + tolerance + ": " + this);
        }
        return this;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "sprayed %.9g kg = film %.9g + airborne %.9g + overspray %.9g + dripped %.9g + masked %.9g + beyond %.9g, closure %.2g, audited %.2g",
                sprayedKg,
                filmKg,
                airborneKg,
                oversprayKg,
                drippedKg,
                maskedKg,
                beyondKg,
                closure(),
                audited());
    }

    public static Builder builder() {
        return new Builder();
    }

    /**
     * Collects the terms of a ledger. Contributions may come in many pieces; each account is a compensated sum (Neumaier
     * 1974) in the order of the calls, so that the same calls give the same bits.
     */
    public static final class Builder {
        private final OrderedSum sprayed = new OrderedSum();
        private final OrderedSum film = new OrderedSum();
        private final OrderedSum airborne = new OrderedSum();
        private final OrderedSum overspray = new OrderedSum();
        private final OrderedSum dripped = new OrderedSum();
        private final OrderedSum masked = new OrderedSum();
        private final OrderedSum beyond = new OrderedSum();
        private final OrderedSum audited = new OrderedSum();

        private Builder() {}

        /** Liquid that left the tip, or fog present at the start, kg. */
        public Builder sprayed(double kg) {
            sprayed.add("sprayed", kg);
            return this;
        }

        /** Film on the structure, kg. */
        public Builder film(double kg) {
            film.add("film", kg);
            return this;
        }

        /** Fog in the air, kg. */
        public Builder airborne(double kg) {
            airborne.add("airborne", kg);
            return this;
        }

        /** Left through an opening with the air or straight from a jet, kg. */
        public Builder overspray(double kg) {
            overspray.add("overspray", kg);
            return this;
        }

        /** Drained or fell out as liquid, kg. */
        public Builder dripped(double kg) {
            dripped.add("dripped", kg);
            return this;
        }

        /** On tape, plugs and closed covers, kg. */
        public Builder masked(double kg) {
            masked.add("masked", kg);
            return this;
        }

        /** Carried into bays that are not computed, kg. */
        public Builder beyond(double kg) {
            beyond.add("beyond", kg);
            return this;
        }

        /** Rounding that audits put right, of either sign, kg; not part of the sum. */
        public Builder audited(double kg) {
            audited.add("audited", kg);
            return this;
        }

        public MassLedger build() {
            return new MassLedger(
                    sprayed.value(),
                    film.value(),
                    airborne.value(),
                    overspray.value(),
                    dripped.value(),
                    masked.value(),
                    beyond.value(),
                    audited.value());
        }
    }

    /** Compensated running sum. */
    private static final class OrderedSum {
        private double sum;
        private double lost;

        void add(String account, double kg) {
            if (!(kg >= 0) || Double.isInfinite(kg)) {
                throw new SimulationException("ledger: " + kg + " kg booked on " + account);
            }
            double t = sum + kg;
            lost += sum >= kg ? sum - t + kg : kg - t + sum;
            sum = t;
        }

        double value() {
            return sum + lost;
        }
    }
}
