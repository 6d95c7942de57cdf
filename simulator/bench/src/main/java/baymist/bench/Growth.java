package baymist.bench;

import baymist.report.CheckReport;
import baymist.report.FilmTable;
import baymist.report.ResultJson;
import baymist.report.TextReport;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.scene.Scene;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.IntFunction;

/** How the time of whole runs grows from size to size, stage by stage, in processor time of all threads. */
final class Growth {
    /** Stages that take less are not given an exponent: the clock of processor time ticks at 10 ms. */
    private static final double LEAST_S = 0.1;

    /** Runs before the first that counts: what Java takes to compile would flatter the exponents. */
    private static final int WARM = 3;

    private static final String WHOLE = "whole run";
    private static final String CHECK = "`check` by itself";
    private static final String CELLS = "cells";

    private final Page page;
    private final int rounds;

    /** @param rounds runs of each size, of which the quicker counts in each stage */
    Growth(Page page, int rounds) {
        this.page = page;
        this.rounds = rounds;
    }

    /**
     * Runs a scene at several sizes and prints the times and the exponents of their growth with the cells.
     *
     * @param unit word behind a size, such as "bays"
     * @param goal largest exponent of the whole, or 0 for none
     */
    void table(String title, int[] sizes, String unit, IntFunction<Scene> scene, double goal) throws IOException {
        List<Map<String, Double>> times = new ArrayList<>();
        for (int warm = 0; warm < WARM; warm++) {
            once(scene.apply(sizes[1]));
        }
        for (int size : sizes) {
            System.err.println("running: " + title + ", " + size + " " + unit);
            Map<String, Double> best = once(scene.apply(size));
            for (int round = 1; round < rounds; round++) {
                once(scene.apply(size)).forEach((k, v) -> best.merge(k, v, Math::min));
            }
            best.put(WHOLE, wholeS(best));
            times.add(best);
        }
        double[] cells = column(times, CELLS);
        page.say("## Whole runs: %s", title);
        StringBuilder header = new StringBuilder("| processor s |");
        StringBuilder line = new StringBuilder("|---|");
        for (int i = 0; i < sizes.length; i++) {
            header.append(text(" %d %s: %,.0f cells |", sizes[i], unit, cells[i]));
            line.append("---|");
        }
        for (int i = 1; i < sizes.length; i++) {
            header.append(text(" exponent %d to %d |", sizes[i - 1], sizes[i]));
            line.append("---|");
        }
        header.append(" overall |\n").append(line).append("---|\n");
        List<String> rows = new ArrayList<>();
        for (String what : times.get(times.size() - 1).keySet()) {
            if (!what.equals(CELLS)) {
                rows.add(row(what, cells, column(times, what)));
            }
        }
        page.table(header.toString(), rows);
        System.err.print(header + String.join("", rows));
        double[] whole = column(times, WHOLE);
        int last = cells.length - 1;
        page.say(
                "Time of the whole grows as cells^%.2f%s; between the two largest as cells^%.2f.",
                Power.fitted(cells, whole),
                goal > 0 ? text(" (goal: at most %.1f)", goal) : "",
                Power.between(cells, whole, last - 1, last));
    }

    private static String row(String what, double[] cells, double[] values) {
        boolean counted = what.startsWith("(");
        int last = values.length - 1;
        StringBuilder row = new StringBuilder("| ").append(what).append(" |");
        for (double v : values) {
            row.append(text(counted ? " %.3g |" : " %.2f |", v));
        }
        for (int i = 1; i <= last; i++) {
            boolean told = counted || Math.min(values[i - 1], values[i]) >= LEAST_S;
            row.append(told ? text(" %.2f |", Power.between(cells, values, i - 1, i)) : " |");
        }
        boolean told = counted || Math.min(values[0], values[last]) >= LEAST_S;
        return row.append(told ? text(" %.2f |%n", Power.fitted(cells, values)) : " |\n")
                .toString();
    }

    private static double wholeS(Map<String, Double> stages) {
        return stages.entrySet().stream()
                .filter(e -> !e.getKey().startsWith("(")
                        && !e.getKey().equals(CELLS)
                        && !e.getKey().equals(CHECK))
                .mapToDouble(Map.Entry::getValue)
                .sum();
    }

    private static double[] column(List<Map<String, Double>> times, String what) {
        return times.stream().mapToDouble(t -> t.getOrDefault(what, Double.NaN)).toArray();
    }

    /** Processor seconds of each stage of one run with its files, and what was counted, in brackets. */
    private static Map<String, Double> once(Scene scene) throws IOException {
        System.gc();
        RunOptions options = new RunOptions(2);
        StageTimes times = new StageTimes();
        RunResult r = Simulation.run(scene, options, times);
        times.begin("summary, result and film table");
        Path folder = Files.createTempDirectory("growth");
        TextReport.of(r);
        ResultJson.write(r, folder.resolve("result.json"));
        FilmTable.write(r, folder.resolve(FilmTable.FILE));
        times.begin(CHECK);
        CheckReport.text(Simulation.check(scene, options, RunObserver.NONE));
        Map<String, Double> all = times.processorS();
        for (String file : List.of("result.json", FilmTable.FILE)) {
            Files.delete(folder.resolve(file));
        }
        Files.delete(folder);
        Map<String, String> set = r.record().settings();
        all.put("(10^6 fog updates)", 1e-6 * Double.parseDouble(set.getOrDefault("fog cell updates", "0")));
        if (set.containsKey("air cells")) {
            double steps = Double.parseDouble(set.getOrDefault("air steps", "0"));
            all.put("(10^6 air cells x steps)", 1e-6 * steps * Double.parseDouble(set.get("air cells")));
        }
        all.put("(smallest fog step, ms)", 1e3 * seconds(set.getOrDefault("smallest fog step", "0 s")));
        all.put(CELLS, (double) r.grid().cellCount());
        return all;
    }

    private static double seconds(String said) {
        return Double.parseDouble(said.replace(" s", ""));
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
