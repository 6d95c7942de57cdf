package baymist.ledger;

/**
 * Where every kilogram went; each term is summed from its own field, none by difference.
 *
 * @param sprayedKg left the tip (plus fog present at the start)
 * @param filmKg on the structure
 * @param airborneKg still in the air of the cavity
 * @param oversprayKg left through openings with the air or straight from a jet
 * @param drippedKg fell off or drained out as liquid
 * @param maskedKg on tape, plugs and closed covers
 */
public record MassLedger(
        double sprayedKg, double filmKg, double airborneKg, double oversprayKg, double drippedKg, double maskedKg) {
    /** Relative closure error; 0 when nothing was sprayed. */
    public double closure() {
        double sum = filmKg + airborneKg + oversprayKg + drippedKg + maskedKg;
        return sprayedKg == 0 ? 0 : (sum - sprayedKg) / sprayedKg;
    }
}
