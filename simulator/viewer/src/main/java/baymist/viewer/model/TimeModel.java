package baymist.viewer.model;

import java.util.List;

/**
 * Time of a job as it is played: a pure function of a clock that the caller reads. Clock times are in s from any beginning, never falling.
 *
 * @param endS end of the job, s
 * @param jobS job time at {@code clockS}, s, 0..endS
 * @param clockS clock time of the last change, s
 * @param speed job seconds in a second of the clock, above 0
 * @param playing whether time goes on
 */
public record TimeModel(double endS, double jobS, double clockS, double speed, boolean playing) {
    /** Speeds to choose from. */
    public static final List<Double> SPEEDS = List.of(0.25, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 60.0);

    public TimeModel {
        if (!(endS >= 0) || !(jobS >= 0 && jobS <= endS) || !(speed > 0)) {
            throw new IllegalArgumentException("time " + jobS + " s of " + endS + " s at speed " + speed);
        }
    }

    /** Stopped at the end of a job, where its result is. */
    public static TimeModel atEnd(double endS) {
        return new TimeModel(endS, endS, 0, 1, false);
    }

    /** Job time at a clock time, s; it stops at the end. */
    public double jobTimeS(double atClockS) {
        double gone = playing ? Math.max(0, atClockS - clockS) * speed : 0;
        return Math.min(endS, jobS + gone);
    }

    /** Whether it goes on at a clock time: playing and not yet at the end. */
    public boolean running(double atClockS) {
        return playing && jobTimeS(atClockS) < endS;
    }

    /** Goes on from where it stands; from the beginning when it stands at the end. */
    public TimeModel play(double atClockS) {
        double from = jobTimeS(atClockS);
        return new TimeModel(endS, from >= endS ? 0 : from, atClockS, speed, true);
    }

    public TimeModel pause(double atClockS) {
        return new TimeModel(endS, jobTimeS(atClockS), atClockS, speed, false);
    }

    public TimeModel playOrPause(double atClockS) {
        return running(atClockS) ? pause(atClockS) : play(atClockS);
    }

    /** Goes to a job time, within the job; it plays on if it played. */
    public TimeModel scrub(double toJobS, double atClockS) {
        return new TimeModel(endS, Math.max(0, Math.min(endS, toJobS)), atClockS, speed, playing);
    }

    /** The same job time now, another speed from now on. */
    public TimeModel withSpeed(double other, double atClockS) {
        return new TimeModel(endS, jobTimeS(atClockS), atClockS, other, playing);
    }

    /** The next faster ({@code by} above 0) or slower of {@link #SPEEDS}. */
    public TimeModel faster(int by, double atClockS) {
        int nearest = 0;
        for (int i = 1; i < SPEEDS.size(); i++) {
            boolean closer =
                    Math.abs(Math.log(SPEEDS.get(i) / speed)) < Math.abs(Math.log(SPEEDS.get(nearest) / speed));
            nearest = closer ? i : nearest;
        }
        return withSpeed(SPEEDS.get(Math.max(0, Math.min(SPEEDS.size() - 1, nearest + by))), atClockS);
    }
}
