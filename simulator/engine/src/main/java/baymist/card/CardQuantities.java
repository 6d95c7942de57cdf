package baymist.card;

import baymist.access.Station;
import baymist.card.WorkCard.BayShare;
import baymist.card.WorkCard.Product;
import baymist.card.WorkCard.Step;
import baymist.card.WorkCard.Supply;
import baymist.card.WorkCard.Times;
import baymist.card.WorkCard.Wand;
import baymist.coverage.Fractions;
import baymist.run.Nozzles;
import baymist.scene.CardSpec;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.SupplySpec;
import baymist.scene.TipSpec;
import baymist.scene.WandSpec;
import baymist.spray.TipFlow;
import java.util.ArrayList;
import java.util.List;

/** Product, supply, wands and times of a card. */
final class CardQuantities {
    private final CardSource source;
    private final Scene scene;

    CardQuantities(CardSource source) {
        this.source = source;
        this.scene = source.scene();
    }

    Product product() {
        CardSpec spec = scene.studies().card();
        double sprayed = source.figures().sprayedKg() / scene.product().densityKgPerM3();
        double bores = scene.passes().stream()
                .map(PassSpec::wand)
                .distinct()
                .map(scene.wands()::get)
                .mapToDouble(w -> w == null ? 0 : Math.PI / 4 * w.boreM() * w.boreM() * w.lengthM())
                .sum();
        double needed = (sprayed + bores) * (1 + spec.allowance());
        int cups = cups(needed, spec.cupM3());
        return new Product(
                scene.product().name(),
                scene.product().temperatureK(),
                sprayed,
                bores,
                spec.allowance(),
                needed,
                spec.cupM3(),
                cups,
                Math.max(0, cups - 1),
                bays());
    }

    /** Fillings that hold a volume; a hair over a whole number is that number. */
    static int cups(double volumeM3, double cupM3) {
        return (int) Math.max(1, Math.ceil(volumeM3 / cupM3 - 1e-9));
    }

    private List<BayShare> bays() {
        List<BayShare> bays = new ArrayList<>();
        for (Fractions f : source.coverage().byBay()) {
            bays.add(new BayShare(f.name(), f.areaM2(), f.areaM2() * f.meanFilmM(), f.reached()));
        }
        return bays;
    }

    List<Supply> supply() {
        List<Supply> all = new ArrayList<>();
        if (scene.passes().isEmpty()) {
            return all;
        }
        SupplySpec stated = scene.supply();
        double gauge = stated instanceof SupplySpec.Pressure p ? p.gaugePa() : Double.NaN;
        boolean hose = stated instanceof SupplySpec.Pressure p && p.feed() != null;
        for (var e : Nozzles.flows(scene).entrySet()) {
            TipFlow tip = e.getValue();
            all.add(new Supply(
                    e.getKey(),
                    gauge,
                    hose,
                    tip.airKgPerS() / scene.ambient().densityKgPerM3(),
                    tip.airKgPerS(),
                    tip.supply().liquidKgPerS() / scene.product().densityKgPerM3()));
        }
        return all;
    }

    List<Wand> wands(List<Step> steps) {
        List<Wand> all = new ArrayList<>();
        for (String name :
                scene.passes().stream().map(PassSpec::wand).distinct().toList()) {
            WandSpec w = scene.wands().get(name);
            if (w != null) {
                List<Integer> used = steps.stream()
                        .filter(s -> s.wand().equals(name))
                        .map(Step::number)
                        .toList();
                double orifice = w.tip().jets().stream()
                        .mapToDouble(TipSpec.Jet::orificeM)
                        .max()
                        .orElse(0);
                all.add(new Wand(
                        name,
                        w.kind(),
                        w.lengthM(),
                        w.thickestM(),
                        w.boreM(),
                        w.tip().name(),
                        w.tip().jets().size(),
                        orifice,
                        used));
            }
        }
        return all;
    }

    Times times() {
        double trigger = source.plan().stations().stream()
                .mapToDouble(Station::durationS)
                .sum();
        double waits = scene.passes().stream().mapToDouble(PassSpec::hangS).sum();
        return new Times(trigger, waits, scene.hangS());
    }
}
