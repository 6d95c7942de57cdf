package baymist.print;

import baymist.card.WorkCard;
import baymist.picture.CardPicture;
import baymist.scene.CardSpec;
import baymist.scene.ProtectedItem;
import baymist.scene.WandSpec;
import java.time.LocalDate;
import java.time.Period;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** The card's figures as words in the user's units, by the names that the template uses. */
final class CardWords {
    /** A bay of which less is reached is not treated by the job (ASSUMED: a smear through a joint is no treatment). */
    private static final double UNTREATED = 0.005;

    private final WorkCard card;
    private final CardUnits units;
    private final Map<String, CardPicture> pictures;

    CardWords(WorkCard card, CardUnits units, Map<String, CardPicture> pictures) {
        this.card = card;
        this.units = units;
        this.pictures = pictures;
    }

    private String svg(String id) {
        CardPicture p = pictures.get(id);
        if (p == null) {
            throw new IllegalStateException("there is no picture " + id);
        }
        return p.svg();
    }

    Map<String, Object> page(Paper paper) {
        Map<String, Object> w = new LinkedHashMap<>();
        StepWords steps = new StepWords(card, units, this::svg);
        w.put("paper", paper.css());
        w.put("touchUp", card.touchUp());
        w.put("kind", card.touchUp() ? "Touch-up card" : "Work card");
        w.put("title", card.origin().title());
        w.put("structure", card.origin().structure());
        w.put("story", card.origin().story());
        w.put(
                "cautions",
                card.cautions().stream()
                        .map(c -> Map.of("about", c.about(), "text", c.text().replace("m3", "m\u00b3")))
                        .toList());
        w.put("items", items());
        w.put("hasItems", !card.items().isEmpty());
        w.put("wands", wands(steps));
        product(w);
        w.put("supply", supply());
        times(w);
        OpeningWords openings = new OpeningWords(card, units);
        w.put("openings", openings.table());
        w.put("now", openings.now());
        w.put("then", openings.then());
        w.put("hasThen", !openings.then().isEmpty());
        w.put("last", openings.last());
        w.put("drains", names(WorkCard.Use.DRAIN));
        w.put("hasDrains", card.openings().stream().anyMatch(o -> o.use() == WorkCard.Use.DRAIN));
        w.put("steps", steps.steps());
        w.put("anyTurned", steps.anyTurned());
        w.put("dialWords", steps.anyTurned() ? steps.dialWords() : "");
        w.put("orderChanged", card.orderChanged());
        w.put("masks", card.masks().all());
        w.put("kinds", openings.masks());
        w.put(
                "drip",
                card.dripM3() < 1e-6 ? "less than " + units.volume(1e-6) : "about " + units.volume(card.dripM3()));
        balance(w);
        w.put("points", points());
        w.put("filmUnit", units.filmUnit());
        w.put("hasPoints", !card.points().isEmpty());
        prediction(w);
        due(w);
        w.put("overviewSvg", svg("overview"));
        w.put("pointsSvg", svg("points"));
        trace(w);
        return Unbroken.of(w);
    }

    private List<Map<String, Object>> items() {
        List<Map<String, Object>> all = new ArrayList<>();
        for (WorkCard.Item i : card.items()) {
            String how = i.mask() == ProtectedItem.Mask.NONE
                    ? "not masked in the job as run; mask it all the same where you can"
                    : i.mask() == ProtectedItem.Mask.BAG ? "in a bag, tied" : "taped over";
            all.add(Map.of(
                    "name",
                    i.name(),
                    "how",
                    how,
                    "limit",
                    i.limitM() > 0 ? "limit " + units.thin(i.limitM()) : "none may reach it",
                    "pictureSvg",
                    svg("item-" + (all.size() + 1))));
        }
        return all;
    }

    private List<Map<String, Object>> wands(StepWords steps) {
        List<Map<String, Object>> all = new ArrayList<>();
        for (WorkCard.Wand x : card.wands()) {
            String kind = x.kind() == WandSpec.Kind.STRAIGHT
                    ? "straight"
                    : x.kind() == WandSpec.Kind.BENT ? "bent" : "flexible";
            all.add(Map.of(
                    "name",
                    x.name(),
                    "about",
                    kind + ", " + units.both(x.lengthM()) + " long, " + units.both(x.thickestM()) + " at its thickest",
                    "tip",
                    x.tip() + ": " + x.jets() + (x.jets() == 1 ? " jet" : " jets") + ", orifices of "
                            + units.length(x.orificeM()),
                    "marks",
                    steps.marks(x),
                    "steps",
                    x.steps().stream().map(String::valueOf).collect(Collectors.joining(", "))));
        }
        return all;
    }

    private void product(Map<String, Object> w) {
        WorkCard.Product p = card.product();
        w.put("product", p.name());
        w.put("temperature", units.temperature(p.temperatureK()));
        w.put("sprayed", units.volume(p.sprayedM3()));
        w.put("bores", units.volume(p.boresM3()));
        w.put("allowance", String.format(Locale.ROOT, "%.0f %%", 100 * p.allowance()));
        w.put("needed", units.volume(p.neededM3()));
        w.put("cup", units.volume(p.cupM3()));
        String refills = p.refills() == 0
                ? "one filling, no refill."
                : (p.refills() == 1 ? "one refill" : p.refills() + " refills")
                        + " with bores and allowance; the passes say when.";
        w.put("refills", refills);
        List<Map<String, Object>> bays = new ArrayList<>();
        for (WorkCard.BayShare b : p.bays()) {
            bays.add(Map.of(
                    "name",
                    b.name(),
                    "area",
                    units.area(b.areaM2()),
                    "film",
                    b.reached() < UNTREATED ? "not treated by this job" : units.volume(b.filmM3()),
                    "reached",
                    CardUnits.percent(b.reached())));
        }
        w.put("bays", bays);
    }

    private List<Map<String, Object>> supply() {
        List<Map<String, Object>> all = new ArrayList<>();
        for (WorkCard.Supply s : card.supply()) {
            String pressure = Double.isNaN(s.gaugePa())
                    ? "as set for the stated jet speed"
                    : units.pressure(s.gaugePa())
                            + (s.atHoseEnd() ? " where the hose ends" : " held at the wand, trigger on");
            all.add(Map.of(
                    "wand",
                    s.wand(),
                    "pressure",
                    pressure,
                    "air",
                    units.air(s.freeAirM3PerS()),
                    "liquid",
                    units.liquid(s.liquidM3PerS()),
                    "caught",
                    units.volume(30 * s.liquidM3PerS())));
        }
        return all;
    }

    private void times(Map<String, Object> w) {
        WorkCard.Times t = card.times();
        w.put("trigger", CardUnits.time(t.triggerS()));
        w.put("waits", t.waitsS() > 0 ? CardUnits.time(t.waitsS()) : "");
        w.put("hang", CardUnits.time(t.hangS()));
        w.put("total", CardUnits.time(t.totalS()));
    }

    private List<String> names(WorkCard.Use use) {
        return card.openings().stream()
                .filter(o -> o.use() == use)
                .map(WorkCard.Opening::name)
                .toList();
    }

    private void balance(Map<String, Object> w) {
        WorkCard.Balance b = card.balance();
        w.put("balance", b != null);
        if (b != null) {
            w.put("oil", CardUnits.number(1e3 * b.oilKg(), 3) + " g");
            w.put("hinge", !Double.isNaN(b.armM()));
            w.put(
                    "arm",
                    Double.isNaN(b.armM()) ? "" : units.both(Math.abs(b.armM())) + (b.armM() >= 0 ? " aft" : " ahead"));
            w.put("moment", CardUnits.number(1e3 * b.momentNm(), 3) + " N\u00b7mm");
        }
    }

    private List<Map<String, Object>> points() {
        List<Map<String, Object>> all = new ArrayList<>();
        for (WorkCard.Point p : card.points()) {
            String size = p.doubt() == WorkCard.Doubt.SEAM_BARE ? units.length(p.size()) : units.area(p.size());
            String doubt = switch (p.doubt()) {
                case BARE -> "bare";
                case SEAM_BARE -> "seam bare";
                case NEAR_LIMIT -> "near limit";
                case FOG_ONLY -> "mist only";
                case FOUND_THIN -> "found thin";
                case FOUND_DRY -> "found dry";
            };
            Map<String, Object> m = new LinkedHashMap<>();
            m.put("number", p.number());
            m.put("doubt", doubt);
            m.put("label", p.label());
            m.put("where", p.where());
            m.put("size", size);
            m.put("film", p.filmM() > 0 ? units.thin(p.filmM()) : "\u2013");
            m.put("reason", p.reason());
            all.add(m);
        }
        return all;
    }

    private void prediction(Map<String, Object> w) {
        WorkCard.Prediction p = card.prediction();
        w.put("area", units.area(p.areaM2()));
        w.put("reached", CardUnits.percent(p.reached()));
        w.put("bare", CardUnits.percent(1 - p.reached()));
        w.put("protected", CardUnits.percent(p.protectedShare()));
        w.put(
                "range",
                Double.isNaN(p.reachedLow())
                        ? ""
                        : CardUnits.percent(p.reachedLow()) + " to " + CardUnits.percent(p.reachedHigh()));
        w.put("seams", Double.isNaN(p.seamsReached()) ? "" : CardUnits.percent(p.seamsReached()));
        w.put("mean", units.film(p.meanFilmM()));
        w.put("haze", units.film(p.hazeM()));
        w.put("build", units.film(p.buildM()));
        w.put("excess", units.film(p.excessM()));
    }

    private void due(Map<String, Object> w) {
        Period interval = card.due().interval();
        LocalDate day = card.due().workDate();
        LocalDate next = card.due().next();
        w.put("interval", interval == null ? "" : CardSpec.words(interval));
        w.put("workDate", day == null ? "" : day.toString());
        w.put("next", next == null ? "" : next.toString());
    }

    private void trace(Map<String, Object> w) {
        WorkCard.Origin o = card.origin();
        w.put("scene", o.sceneFile());
        w.put("hash", o.sceneHash());
        w.put("short", o.sceneHash().substring(0, Math.min(12, o.sceneHash().length())));
        w.put("version", o.engineVersion());
        w.put("state", o.stateHash());
        w.put(
                "settings",
                o.settings().entrySet().stream()
                        .map(e -> e.getKey() + " " + e.getValue())
                        .collect(Collectors.joining("; ")));
    }
}
