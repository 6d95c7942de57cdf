package baymist.print;

import baymist.card.WorkCard;
import baymist.card.WorkCard.Step;
import baymist.picture.CardPictures;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The passes of a card in words. */
final class StepWords {
    private final WorkCard card;
    private final CardUnits units;
    private final Function<String, String> svg;

    StepWords(WorkCard card, CardUnits units, Function<String, String> svg) {
        this.card = card;
        this.units = units;
        this.svg = svg;
    }

    List<Map<String, Object>> steps() {
        List<Map<String, Object>> all = new ArrayList<>();
        double usedM3 = 0;
        for (Step s : card.steps()) {
            boolean fill = usedM3 > 0 && usedM3 + s.productM3() > card.product().cupM3() * (1 + 1e-9);
            Map<String, Object> m = step(s);
            m.put("fill", fill(s, fill ? usedM3 : 0));
            usedM3 = (fill ? 0 : usedM3) + s.productM3();
            // filled up on the way, too
            usedM3 -=
                    card.product().cupM3() * Math.floor(usedM3 / card.product().cupM3() * (1 - 1e-9));
            all.add(m);
        }
        return all;
    }

    private Map<String, Object> step(Step s) {
        Map<String, Object> m = new LinkedHashMap<>();
        m.put("number", s.number());
        m.put("name", s.name());
        m.put("entry", s.entry().equals(s.opening()) ? s.opening() : s.entry() + " (" + s.opening() + ")");
        m.put("letter", letter(s.opening()));
        m.put("wand", s.wand());
        m.put("from", units.both(s.fromM()));
        m.put("to", units.both(s.toM()));
        m.put("way", way(s));
        m.put("still", s.drawBackMPerS() == 0);
        m.put("half", Double.isNaN(s.secondsPerHalfMetre()) ? "" : half(s));
        m.put("rate", s.drawBackMPerS() > 0 ? units.rate(s.drawBackMPerS()) : "");
        m.put("stretch", units.length(s.fromM() - s.toM()));
        m.put("drawing", s.drawBackMPerS() > 0 ? CardUnits.time((s.fromM() - s.toM()) / s.drawBackMPerS()) : "");
        m.put("hold", s.holdS() > 0 ? CardUnits.time(s.holdS()) : "");
        m.put("trigger", CardUnits.time(s.triggerS()));
        String next = s.number() < card.steps().size() ? " before the next pass" : " before the hang time begins";
        m.put("wait", s.waitS() > 0 ? CardUnits.time(s.waitS()) + next : "");
        m.put("clock", clock(s));
        m.put("product", units.volume(s.productM3()));
        m.put("passSvg", svg.apply("pass-" + s.number()));
        m.put("dialSvg", svg.apply("dial-" + s.number()));
        m.put("rodSvg", svg.apply("rod-" + s.number()));
        return m;
    }

    /** When the cup has to be filled again: before a pass that it would not last for, and during one that takes more than it holds. */
    private String fill(Step s, double usedM3) {
        String before =
                usedM3 > 0 ? "fill it up first; " + units.volume(usedM3) + " are gone since the last filling" : "";
        if (s.productM3() <= card.product().cupM3() * (1 + 1e-9)) {
            return before;
        }
        double afterS = s.triggerS() * card.product().cupM3() / s.productM3();
        return (before.isEmpty() ? "" : before + "; ") + "this pass takes more than one: every "
                + CardUnits.time(afterS) + " trigger off, fill up, go on from the same mark";
    }

    /** Letter of an opening in the table and the overview; empty for one that is not in them. */
    private String letter(String opening) {
        for (int i = 0; i < card.openings().size(); i++) {
            if (card.openings().get(i).name().equals(opening)) {
                return CardPictures.letter(i);
            }
        }
        return "";
    }

    private static String way(Step s) {
        String how = switch (s.kind()) {
            case STRAIGHT -> "straight in";
            case BENT -> "tip first, the bend after it, turn the handle";
            case FLEXIBLE -> "feed it in without force";
        };
        String by = s.stopped();
        if (by == null) {
            return how + ", up to the mark";
        }
        return how + ", "
                + (by.equals("wand length") ? "all of the wand" : "until it touches " + by + ", then back to the mark");
    }

    /** Where to put tape on a wand: every mark of its passes, deepest first. */
    String marks(WorkCard.Wand wand) {
        TreeSet<Long> tenths = new TreeSet<>();
        for (Step s : card.steps()) {
            if (s.wand().equals(wand.name())) {
                tenths.add(Math.round(1e4 * s.fromM()));
                tenths.add(Math.round(1e4 * s.toM()));
            }
        }
        return tenths.descendingSet().stream()
                .map(t -> units.length(1e-4 * t))
                .distinct()
                .collect(Collectors.joining(", "));
    }

    private String half(Step s) {
        String half = String.format(Locale.ROOT, "%.1f s for each half metre", s.secondsPerHalfMetre());
        return units.inches()
                ? half + String.format(Locale.ROOT, " (%.1f s a foot)", 0.3048 / s.drawBackMPerS())
                : half;
    }

    boolean anyTurned() {
        return card.steps().stream().anyMatch(Step::turned);
    }

    /** What the dial shows, for the wands of this card. */
    String dialWords() {
        boolean pin = card.steps().stream().anyMatch(s -> s.turned() && s.kind() != WandSpec.Kind.BENT);
        boolean hook = card.steps().stream().anyMatch(s -> s.turned() && s.kind() == WandSpec.Kind.BENT);
        List<String> words = new ArrayList<>();
        if (pin) {
            words.add("the pin (the mark at the wand's near end in line with its first or middle jet)");
        }
        if (hook) {
            words.add("the way a hook's tip points");
        }
        return "The dial shows " + String.join(", or ", words) + ", seen from outside along the wand; keep it there.";
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
}
