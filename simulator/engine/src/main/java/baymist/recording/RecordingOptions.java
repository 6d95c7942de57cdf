package baymist.recording;

/**
 * How much of a run is kept.
 *
 * @param frames most frames of film and fog, 2 or more
 * @param maxFogCells most blocks that the fog is kept on
 * @param maxBytes most memory for frames; fewer are kept where they would take more, but never less than 2
 */
public record RecordingOptions(int frames, int maxFogCells, long maxBytes) {
    /** 120 frames, 30,000 blocks, 512 MB. */
    public static final RecordingOptions DEFAULT = new RecordingOptions(120, 30_000, 512L << 20);

    public RecordingOptions {
        if (frames < 2 || maxFogCells < 1 || maxBytes < 1) {
            throw new IllegalArgumentException(
                    frames + " frames, " + maxFogCells + " fog cells, " + maxBytes + " bytes");
        }
    }

    public RecordingOptions withFrames(int most) {
        return new RecordingOptions(most, maxFogCells, maxBytes);
    }
}
