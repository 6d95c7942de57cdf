import com.sun.management.OperatingSystemMXBean;
import java.io.BufferedReader;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.lang.management.ManagementFactory;
import java.lang.reflect.Method;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Runs commands of the program one after another in one Java machine: {@code java -cp baymist.jar DocWorker.java}. Each line of the input is
 * a log file and the arguments, parted by tabs; each line of the output is an exit code
 * and the processor time that the command took, s.
 */
final class DocWorker {
    public static void main(String[] ignored) throws Exception {
        System.setProperty("java.awt.headless", "true");
        PrintStream answers = new PrintStream(new FileOutputStream(FileDescriptor.out), true, StandardCharsets.UTF_8);
        Method run = Class.forName("baymist.cli.Main")
                .getMethod("run", String[].class, PrintWriter.class, PrintWriter.class, boolean.class);
        OperatingSystemMXBean system = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        BufferedReader in = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        for (String line = in.readLine(); line != null; line = in.readLine()) {
            String[] parts = line.split("\t", -1);
            String[] args = java.util.Arrays.copyOfRange(parts, 1, parts.length);
            try (PrintWriter log = new PrintWriter(Files.newBufferedWriter(Path.of(parts[0])), true)) {
                int code;
                long before = system.getProcessCpuTime();
                try {
                    code = (Integer) run.invoke(null, args, log, log, false);
                } catch (ReflectiveOperationException e) {
                    e.printStackTrace(log);
                    code = 70;
                }
                answers.println(code + " " + (system.getProcessCpuTime() - before) * 1e-9);
            }
        }
    }
}
