package baymist.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** A page of figures as a command prints it: on standard output, and into a folder where {@code --write} names one. */
final class Page {
    private final StringBuilder text = new StringBuilder();

    Page(String title, String call) {
        text.append("# ").append(title).append("\n\nPrinted, not written by hand, by\n\n```\njava ");
        text.append(Machine.vectors() ? "--add-modules jdk.incubator.vector " : "");
        text.append("-jar simulator/bench/target/benchmarks.jar ").append(call).append("\n```\n");
    }

    /** A paragraph. */
    void say(String format, Object... values) {
        text.append('\n').append(String.format(Locale.ROOT, format, values)).append('\n');
    }

    void table(String header, List<String> rows) {
        text.append('\n').append(header);
        rows.forEach(text::append);
    }

    /** Prints the page, and writes it if the call says where. */
    void finish(Arguments args, String file) throws IOException {
        System.out.print(text);
        if (args.has("--write")) {
            Path folder = Path.of(args.text("--write", "docs/benchmarks"));
            Files.createDirectories(folder);
            Files.writeString(folder.resolve(file), text, StandardCharsets.UTF_8);
        }
    }
}
