package baymist.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Runs a command of the benchmarks in a Java of its own, cold as a user starts it. */
final class OwnJava {
    private OwnJava() {}

    /** What the command printed on standard output; what it says besides goes through. */
    static String printed(String heap, List<String> command) throws IOException, InterruptedException {
        List<String> call = new ArrayList<>(
                List.of(System.getProperty("java.home") + "/bin/java", "-Xmx" + heap, "-Djava.awt.headless=true"));
        if (Machine.vectors()) {
            call.addAll(List.of("--add-modules", "jdk.incubator.vector"));
        }
        call.addAll(List.of("-cp", System.getProperty("java.class.path"), Bench.class.getName()));
        call.addAll(command);
        Process process = new ProcessBuilder(call)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        process.waitFor();
        return printed;
    }
}
