package baymist.export;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Properties;

/**
 * The library that draws the 3-D view (three.js, MIT licence), as it lies on the class path, made into modules that a page carries inside
 * itself.
 *
 * @param version of the library
 * @param licence its licence, word for word
 * @param importMap JSON that tells a browser where the modules are: in the page
 */
record ThreeLibrary(String version, String licence, String importMap) {
    private static final String PROPERTIES = "META-INF/maven/org.webjars.npm/three/pom.properties";

    /**
     * Reads the library.
     *
     * @throws IllegalStateException if it is not on the class path, or not as it is expected to be
     */
    static ThreeLibrary load() {
        try {
            Properties p = new Properties();
            p.load(new java.io.StringReader(text(PROPERTIES)));
            String version = p.getProperty("version", "");
            String folder = "META-INF/resources/webjars/three/" + version + "/";
            // a module inside a page has no folder, so its neighbour is called by a name of the map
            String main =
                    replaced(text(folder + "build/three.module.min.js"), "\"./three.core.min.js\"", "\"three-core\"");
            String map = "{\"imports\":{"
                    + entry("three", main) + ","
                    + entry("three-core", text(folder + "build/three.core.min.js")) + ","
                    + entry(
                            "three/addons/controls/OrbitControls.js",
                            text(folder + "examples/jsm/controls/OrbitControls.js"))
                    + "}}";
            return new ThreeLibrary(version, text(folder + "LICENSE"), map);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String entry(String name, String module) {
        String packed = Base64.getEncoder().encodeToString(module.getBytes(StandardCharsets.UTF_8));
        return "\"" + name + "\":\"data:text/javascript;base64," + packed + "\"";
    }

    private static String replaced(String text, String from, String to) {
        if (!text.contains(from)) {
            throw new IllegalStateException("the 3-D library no longer calls its core " + from);
        }
        return text.replace(from, to);
    }

    /** A file of the class path as text. */
    static String text(String path) throws IOException {
        try (InputStream in = ThreeLibrary.class.getClassLoader().getResourceAsStream(path)) {
            if (in == null) {
                throw new IllegalStateException(path + " is not on the class path");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
