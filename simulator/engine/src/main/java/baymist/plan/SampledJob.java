package baymist.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * One job as a hand might do it: standard normal and uniform draws, before any spread is put on them.
 *
 * @param size draw of the droplets' median
 * @param hands draws of each stroke, in the order of the plan
 */
record SampledJob(double size, List<Hand> hands) {
    SampledJob {
        hands = List.copyOf(hands);
    }

    /**
     * What a hand does in one stroke.
     *
     * @param rate, deeper, turned standard normal draws
     * @param stop uniform draw: whether it stops
     * @param at uniform draw: where
     * @param held exponential draw: for how long
     */
    record Hand(double rate, double deeper, double turned, double stop, double at, double held) {}

    static SampledJob draw(Random random, int strokes) {
        double size = random.nextGaussian();
        List<Hand> hands = new ArrayList<>();
        for (int i = 0; i < strokes; i++) {
            hands.add(new Hand(
                    random.nextGaussian(),
                    random.nextGaussian(),
                    random.nextGaussian(),
                    random.nextDouble(),
                    random.nextDouble(),
                    -Math.log(1 - random.nextDouble())));
        }
        return new SampledJob(size, hands);
    }

    /**
     * This job with one habit of another.
     *
     * @param habit index as in {@link Hands#NAMES}
     */
    SampledJob withHabit(int habit, SampledJob of) {
        List<Hand> mixed = new ArrayList<>();
        for (int i = 0; i < hands.size(); i++) {
            Hand a = hands.get(i);
            Hand b = of.hands.get(i);
            mixed.add(
                    switch (habit) {
                        case 0 -> new Hand(b.rate, a.deeper, a.turned, a.stop, a.at, a.held);
                        case 1 -> new Hand(a.rate, b.deeper, a.turned, a.stop, a.at, a.held);
                        case 2 -> new Hand(a.rate, a.deeper, b.turned, a.stop, a.at, a.held);
                        case 3 -> new Hand(a.rate, a.deeper, a.turned, b.stop, b.at, b.held);
                        default -> a;
                    });
        }
        return new SampledJob(habit == 4 ? of.size : size, mixed);
    }
}
