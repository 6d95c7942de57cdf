package baymist.scene.io;

/** Stand-in to be dropped at merge. */
public final class SceneSchema {
    private SceneSchema() {}

    /** Stand-in. */
    public static String json() {
        throw new UnsupportedOperationException("no schema on this branch");
    }
}
