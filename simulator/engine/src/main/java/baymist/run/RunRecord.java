package baymist.run;

import java.util.Map;

/**
 * What it takes to do a run again and to see that it gave the same.
 *
 * @param sceneHash SHA-256 (hex) over the scene file and the files that it names
 * @param threads worker threads used; never shows in the numbers
 * @param secondsByStage wall time of each stage, s, in the order of the stages
 * @param settings numerical settings as text, by name
 * @param stateHash hash (hex) over film and fog at the end; equal for any thread count
 */
public record RunRecord(
        String engineVersion,
        String sceneHash,
        int threads,
        Map<String, Double> secondsByStage,
        Map<String, String> settings,
        String stateHash) {}
