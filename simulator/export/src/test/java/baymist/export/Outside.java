package baymist.export;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** Programs from outside the project that tests ask for a second opinion. */
final class Outside {
    private Outside() {}

    /** What a program said and how it ended. */
    record Said(int code, String text) {}

    /** A Python that has VTK: Debian's packages python3-vtk9 and python3-numpy. */
    static Optional<String> pythonWithVtk() {
        return first(
                List.of("python3", "/usr/bin/python3"),
                "-c",
                "import numpy, vtkmodules.vtkIOXML, vtkmodules.vtkIOGeometry");
    }

    static Optional<String> chromium() {
        return first(List.of("chromium", "chromium-browser", "google-chrome"), "--version");
    }

    private static Optional<String> first(List<String> names, String... arguments) {
        for (String name : names) {
            try {
                if (run(name, arguments).code() == 0) {
                    return Optional.of(name);
                }
            } catch (IOException e) {
                // not on this machine
            }
        }
        return Optional.empty();
    }

    static Said run(String program, String... arguments) throws IOException {
        Path said = Files.createTempFile("said", ".txt");
        try {
            List<String> call = new java.util.ArrayList<>(List.of(program));
            call.addAll(List.of(arguments));
            Process p = new ProcessBuilder(call)
                    .redirectErrorStream(true)
                    .redirectOutput(said.toFile())
                    .start();
            if (!p.waitFor(120, TimeUnit.SECONDS)) {
                p.destroyForcibly();
                throw new IOException(program + " did not end");
            }
            return new Said(p.exitValue(), Files.readString(said, StandardCharsets.UTF_8));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
        } finally {
            Files.deleteIfExists(said);
        }
    }
}
