package baymist.card;

import baymist.geom.Vec3;
import baymist.scene.OpeningState;
import baymist.scene.ProtectedItem;
import baymist.scene.WandSpec;
import java.time.LocalDate;
import java.time.Period;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A work card in SI units, in the order in which it is read.
 *
 * @param touchUp whether it is for places found thin or dry rather than for the whole job
 * @param cautions read before anything is opened
 * @param items what the product must not reach
 * @param openings openings to the outside and what is done with each
 * @param orderChanged whether the passes stand in another order than the scene's
 * @param points where to look afterwards, least sure first
 */
public record WorkCard(
        Origin origin,
        boolean touchUp,
        List<Caution> cautions,
        List<Item> items,
        List<Wand> wands,
        Product product,
        List<Supply> supply,
        Times times,
        List<Opening> openings,
        List<Step> steps,
        boolean orderChanged,
        Masks masks,
        double dripM3,
        @Nullable Balance balance,
        List<Point> points,
        Prediction prediction,
        Due due) {
    public WorkCard {
        cautions = List.copyOf(cautions);
        items = List.copyOf(items);
        wands = List.copyOf(wands);
        supply = List.copyOf(supply);
        openings = List.copyOf(openings);
        steps = List.copyOf(steps);
        points = List.copyOf(points);
    }

    /** Where the card comes from, so that it can be made again. */
    public record Origin(
            String title,
            String story,
            String structure,
            String sceneFile,
            String sceneHash,
            String engineVersion,
            String stateHash,
            Map<String, String> settings) {
        public Origin {
            settings = java.util.Collections.unmodifiableMap(new java.util.LinkedHashMap<>(settings));
        }
    }

    /** A caution: a word or two, then what it asks. */
    public record Caution(String about, String text) {}

    /**
     * A protected item.
     *
     * @param centreM middle of it, m
     * @param limitM film from which its limit is exceeded, m
     */
    public record Item(String name, ProtectedItem.Mask mask, double limitM, Vec3 centreM) {}

    /** A wand to be brought, with where it is used. */
    public record Wand(
            String name,
            WandSpec.Kind kind,
            double lengthM,
            double thickestM,
            double boreM,
            String tip,
            int jets,
            double orificeM,
            List<Integer> steps) {
        public Wand {
            steps = List.copyOf(steps);
        }
    }

    /**
     * Product for all bays.
     *
     * @param sprayedM3 what the passes spray
     * @param boresM3 what stays in the wands' bores
     * @param allowance share on top
     * @param neededM3 all of it
     * @param cups cups or tanks to be filled
     * @param refills how often a cup is filled again
     */
    public record Product(
            String name,
            double temperatureK,
            double sprayedM3,
            double boresM3,
            double allowance,
            double neededM3,
            double cupM3,
            int cups,
            int refills,
            List<BayShare> bays) {
        public Product {
            bays = List.copyOf(bays);
        }
    }

    /** What a bay is to get: its surface, and the film that the run leaves on it as a volume. */
    public record BayShare(String name, double areaM2, double filmM3, double reached) {}

    /**
     * What a wand needs.
     *
     * @param gaugePa pressure that is set, Pa above ambient; NaN where the scene states an exit speed
     * @param atHoseEnd whether it is read where the hose ends, else it holds at the tip
     * @param freeAirM3PerS air at ambient density
     * @param liquidM3PerS liquid through the tip
     */
    public record Supply(
            String wand,
            double gaugePa,
            boolean atHoseEnd,
            double freeAirM3PerS,
            double airKgPerS,
            double liquidM3PerS) {}

    /** Times, s. Setting up and masking are not in them. */
    public record Times(double triggerS, double waitsS, double hangS) {
        public double totalS() {
            return triggerS + waitsS + hangS;
        }
    }

    /** What an opening is for. */
    public enum Use {
        ENTRY,
        VENT,
        DRAIN,
        PANEL
    }

    /**
     * An opening to the outside.
     *
     * @param part what it is cut into
     * @param lengthM,widthM its size, m; equal for a circle
     * @param before as it is found: as after the job
     */
    public record Opening(
            String name,
            Use use,
            String part,
            double lengthM,
            double widthM,
            boolean round,
            Vec3 centreM,
            OpeningState before,
            OpeningState pass,
            OpeningState hang,
            OpeningState after) {
        /** Whether something has to be done with it. */
        public boolean handled() {
            return use == Use.ENTRY || before != pass || pass != hang || hang != after || masked();
        }

        /** Whether tape or a plug is put on or in it at some time. */
        public boolean masked() {
            return pass == OpeningState.TAPED
                    || pass == OpeningState.PLUGGED
                    || hang == OpeningState.TAPED
                    || hang == OpeningState.PLUGGED;
        }
    }

    /**
     * One pass.
     *
     * @param number place on the card, from 1
     * @param scenePass index of the pass in the scene
     * @param fromM,toM insertion depth of the tip where the trigger goes on and off, m along the wand
     * @param stopped what ends the way of the wand where it starts as deep as it goes, else null
     * @param drawBackMPerS draw-back rate; 0 = the wand is held still
     * @param holdS trigger time at the start before drawing back, s
     * @param triggerS trigger time in all, s
     * @param waitS wait after it, s
     * @param clockRad clock angle of the pin, 0..2 pi
     * @param up whether 12 on the dial is up; else it is forward
     * @param pin where the pin points, in structure words
     * @param turned whether the tip sprays another way when it is turned
     * @param entryM where the wand passes the opening, m
     * @param axis unit vector going in
     * @param wayM centre line of the wand where the trigger goes on, m
     * @param tipsM places of the tip while the trigger is on, in time, m
     * @param heightM mean height of the tip against gravity, m
     */
    public record Step(
            int number,
            int scenePass,
            String name,
            String entry,
            String opening,
            String wand,
            WandSpec.Kind kind,
            double fromM,
            double toM,
            @Nullable String stopped,
            double drawBackMPerS,
            double holdS,
            double triggerS,
            double waitS,
            double clockRad,
            boolean up,
            String pin,
            boolean turned,
            Vec3 entryM,
            Vec3 axis,
            List<Vec3> wayM,
            List<Vec3> tipsM,
            double heightM,
            double productM3) {
        public Step {
            wayM = List.copyOf(wayM);
            tipsM = List.copyOf(tipsM);
        }

        /** Seconds for half a metre of draw-back; NaN where the wand is held still. */
        public double secondsPerHalfMetre() {
            return drawBackMPerS > 0 ? 0.5 / drawBackMPerS : Double.NaN;
        }
    }

    /** What is fitted and has to come out again: tape and plugs on openings, masks on items. */
    public record Masks(int tapes, int plugs, int bags) {
        public int all() {
            return tapes + plugs + bags;
        }
    }

    /**
     * Oil that a control surface keeps.
     *
     * @param oilKg mass a day after close-up
     * @param armM its centre aft of the hinge line, m; NaN where the scene states no line
     */
    public record Balance(double oilKg, double armM, double momentNm) {}

    /** Why a place is to be looked at. */
    public enum Doubt {
        BARE,
        SEAM_BARE,
        NEAR_LIMIT,
        FOG_ONLY,
        FOUND_THIN,
        FOUND_DRY
    }

    /**
     * A place to look at.
     *
     * @param where in structure words
     * @param atM middle, m
     * @param size area, m²; for a seam length, m
     * @param filmM mean film that the run leaves there
     * @param label name of the bare region, or ""
     * @param reason why it is missed, or ""
     */
    public record Point(
            int number, Doubt doubt, String where, Vec3 atM, double size, double filmM, String label, String reason) {}

    /** What the run says of the whole, shares 0..1; range by droplet sizes, NaN where unknown. */
    public record Prediction(
            double areaM2,
            double reached,
            double protectedShare,
            double reachedLow,
            double reachedHigh,
            double seamsReached,
            double meanFilmM,
            double hazeM,
            double buildM,
            double excessM) {}

    /**
     * When it is due again.
     *
     * @param interval as set by the user, or null
     * @param workDate day of the work, or null
     */
    public record Due(@Nullable Period interval, @Nullable LocalDate workDate) {
        /** The next due date, or null where interval or day is not stated. */
        public @Nullable LocalDate next() {
            return interval == null || workDate == null ? null : workDate.plus(interval);
        }
    }
}
