package baymist.print;

import baymist.card.WorkCard;
import baymist.card.WorkCard.Step;
import baymist.picture.CardPicture;
import baymist.picture.CardPictures;
import baymist.scene.CardSpec;
import baymist.scene.OpeningState;
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
        w.put("wands", wands());
        product(w);
        w.put("supply", supply());
        times(w);
        w.put("openings", openings());
        w.put("drains", names(WorkCard.Use.DRAIN));
        w.put("hasDrains", card.openings().stream().anyMatch(o -> o.use() == WorkCard.Use.DRAIN));
        w.put("steps", steps());
        w.put("orderChanged", card.orderChanged());
        masks(w);
        w.put(
                "drip",
                card.dripM3() < 1e-6 ? "less than " + units.volume(1e-6) : "about " + units.volume(card.dripM3()));
        balance(w);
        w.put("points", points());
        w.put("hasPoints", !card.points().isEmpty());
        prediction(w);
        due(w);
        w.put("overviewSvg", svg("overview"));
        w.put("pointsSvg", svg("points"));
        trace(w);
        return w;
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

    private List<Map<String, Object>> wands() {
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
                ? "one filling, no refill"
                : p.refills() == 1 ? "one refill" : p.refills() + " refills";
        w.put("refills", refills);
        List<Map<String, Object>> bays = new ArrayList<>();
        for (WorkCard.BayShare b : p.bays()) {
            bays.add(Map.of(
                    "name",
                    b.name(),
                    "area",
                    units.area(b.areaM2()),
                    "film",
                    units.volume(b.filmM3()),
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
                    units.liquid(s.liquidM3PerS())));
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

    private List<Map<String, Object>> openings() {
        List<Map<String, Object>> all = new ArrayList<>();
        int n = 0;
        for (WorkCard.Opening o : card.openings()) {
            String size = o.round()
                    ? "\u00d8 " + units.length(o.lengthM())
                    : units.length(o.lengthM()) + " \u00d7 " + units.length(o.widthM());
            all.add(Map.of(
                    "letter",
                    CardPictures.letter(n++),
                    "name",
                    o.name(),
                    "part",
                    o.part(),
                    "size",
                    size,
                    "use",
                    o.use().name().toLowerCase(Locale.ROOT),
                    "pass",
                    o.use() == WorkCard.Use.ENTRY && o.pass() == OpeningState.OPEN ? "open: wand" : word(o.pass()),
                    "hang",
                    word(o.hang()),
                    "after",
                    word(o.after()),
                    "todo",
                    todo(o)));
        }
        return all;
    }

    private static String word(OpeningState s) {
        return s.name().toLowerCase(Locale.ROOT);
    }

    private static String todo(WorkCard.Opening o) {
        if (o.use() == WorkCard.Use.PANEL) {
            return "stays shut";
        }
        if (o.use() == WorkCard.Use.DRAIN && !o.handled()) {
            return "keep clear";
        }
        if (o.before() != OpeningState.OPEN && o.pass() == OpeningState.OPEN) {
            return "take off the cover";
        }
        if (o.pass() == OpeningState.TAPED || o.pass() == OpeningState.PLUGGED) {
            return o.pass() == OpeningState.TAPED ? "tape" : "plug";
        }
        if (o.pass() == OpeningState.CLOSED && o.before() == OpeningState.OPEN) {
            return "close";
        }
        return o.use() == WorkCard.Use.ENTRY ? "wand goes in" : "leave open";
    }

    private List<String> names(WorkCard.Use use) {
        return card.openings().stream()
                .filter(o -> o.use() == use)
                .map(WorkCard.Opening::name)
                .toList();
    }

    private List<Map<String, Object>> steps() {
        List<Map<String, Object>> all = new ArrayList<>();
        for (Step s : card.steps()) {
            Map<String, Object> m = new LinkedHashMap<>();
            m.put("number", s.number());
            m.put("name", s.name());
            m.put("entry", s.entry().equals(s.opening()) ? s.opening() : s.entry() + " (" + s.opening() + ")");
            m.put("wand", s.wand());
            m.put("from", units.both(s.fromM()));
            m.put("to", units.both(s.toM()));
            m.put("stopped", stopped(s));
            m.put("still", s.drawBackMPerS() == 0);
            m.put("half", Double.isNaN(s.secondsPerHalfMetre()) ? "" : half(s));
            m.put("rate", s.drawBackMPerS() > 0 ? units.rate(s.drawBackMPerS()) : "");
            m.put("hold", s.holdS() > 0 ? CardUnits.time(s.holdS()) : "");
            m.put("trigger", CardUnits.time(s.triggerS()));
            String next = s.number() < card.steps().size() ? " before the next pass" : " before the hang time begins";
            m.put("wait", s.waitS() > 0 ? CardUnits.time(s.waitS()) + next : "");
            m.put("clock", clock(s));
            m.put("product", units.volume(s.productM3()));
            m.put("passSvg", svg("pass-" + s.number()));
            m.put("dialSvg", svg("dial-" + s.number()));
            m.put("rodSvg", svg("rod-" + s.number()));
            all.add(m);
        }
        return all;
    }

    private String half(Step s) {
        String half = String.format(Locale.ROOT, "%.1f s for each half metre", s.secondsPerHalfMetre());
        return units.inches()
                ? half + String.format(Locale.ROOT, " (%.1f s a foot)", 0.3048 / s.drawBackMPerS())
                : half;
    }

    private static String stopped(Step s) {
        String by = s.stopped();
        return by == null ? "" : by.equals("wand length") ? "all of the wand" : "until it touches " + by;
    }

    private static String clock(Step s) {
        if (!s.turned()) {
            return "any: it sprays the same however it is turned";
        }
        double hours = Math.toDegrees(s.clockRad()) / 30;
        String hour = CardUnits.number(hours < 0.05 ? 12 : hours, 3);
        String reference = s.up() ? "" : " with 12 forward";
        return String.format(
                Locale.ROOT,
                "%s at %s o'clock (%.0f\u00b0)%s, pointing %s",
                s.kind() == WandSpec.Kind.BENT ? "hook" : "pin",
                hour,
                Math.toDegrees(s.clockRad()),
                reference,
                s.pin());
    }

    private void masks(Map<String, Object> w) {
        WorkCard.Masks m = card.masks();
        w.put("tapes", m.tapes());
        w.put("plugs", m.plugs());
        w.put("bags", m.bags());
        w.put("masks", m.all());
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
