package baymist.bench;

import java.util.Arrays;
import java.util.List;

/** The benchmarks' one command: its first word names a set of figures; anything else goes to JMH. */
public final class Bench {
    private Bench() {}

    public static void main(String[] args) throws Exception {
        String first = args.length > 0 ? args[0] : "";
        Arguments rest = new Arguments(List.of(args).subList(Math.min(1, args.length), args.length));
        switch (first) {
            case "ratios" -> Ratios.main(rest);
            case "demos" -> Demos.main(rest);
            case "scale" -> Scale.main(rest);
            case "preview" -> PreviewRate.main(rest);
            case "profile" -> Profile.main(rest);
            case "memory" -> Memory.main(rest);
            case "airjob" -> AirJob.main(rest);
            case "airblocks" -> AirBlocks.main(rest);
            default -> org.openjdk.jmh.Main.main(Arrays.copyOf(args, args.length));
        }
    }
}
