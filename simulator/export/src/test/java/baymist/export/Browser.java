package baymist.export;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.WebSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;
import javax.imageio.ImageIO;

/** A headless Chromium with one page, without a network, driven through its DevTools protocol. */
final class Browser implements AutoCloseable {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final long PATIENCE_S = 60;

    private final Path folder;
    private final Process process;
    private final WebSocket socket;
    private final BlockingQueue<JsonNode> heard = new LinkedBlockingQueue<>();
    private final List<JsonNode> events = new ArrayList<>();
    private String session = "";
    private int calls;

    Browser(String program) throws Exception {
        folder = Files.createTempDirectory("browser");
        process = new ProcessBuilder(
                        program,
                        "--headless=new",
                        "--no-sandbox",
                        "--user-data-dir=" + folder.resolve("profile"),
                        "--remote-debugging-port=0",
                        "--remote-allow-origins=*",
                        "--use-angle=swiftshader",
                        "--enable-unsafe-swiftshader",
                        "--disable-dev-shm-usage",
                        "--no-first-run",
                        "--window-size=1300,1000",
                        "about:blank")
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("said.txt").toFile())
                .start();
        socket = HttpClient.newHttpClient()
                .newWebSocketBuilder()
                .buildAsync(URI.create(address()), new Listener())
                .get(PATIENCE_S, TimeUnit.SECONDS);
        String target = call("Target.createTarget", Map.of("url", "about:blank"))
                .get("targetId")
                .asText();
        session = call("Target.attachToTarget", Map.of("targetId", target, "flatten", true))
                .get("sessionId")
                .asText();
        call("Page.enable", Map.of());
        call("Runtime.enable", Map.of());
        call("Network.enable", Map.of());
        call(
                "Network.emulateNetworkConditions",
                Map.of("offline", true, "latency", 0, "downloadThroughput", 0, "uploadThroughput", 0));
        call(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", 1300, "height", 1000, "deviceScaleFactor", 1, "mobile", false));
    }

    /** Where it listens: it writes the port into its profile when it is ready. */
    private String address() throws Exception {
        Path port = folder.resolve("profile/DevToolsActivePort");
        for (int i = 0; i < 10 * PATIENCE_S && process.isAlive(); i++) {
            if (Files.exists(port)) {
                List<String> lines = Files.readAllLines(port);
                if (lines.size() >= 2) {
                    return "ws://127.0.0.1:" + lines.get(0) + lines.get(1);
                }
            }
            Thread.sleep(100);
        }
        throw new IOException("the browser did not start: " + Files.readString(folder.resolve("said.txt")));
    }

    private final class Listener implements WebSocket.Listener {
        private final StringBuilder text = new StringBuilder();

        @Override
        public CompletionStage<?> onText(WebSocket from, CharSequence data, boolean last) {
            text.append(data);
            if (last) {
                try {
                    heard.add(JSON.readTree(text.toString()));
                } catch (IOException e) {
                    throw new IllegalStateException(e);
                }
                text.setLength(0);
            }
            from.request(1);
            return null;
        }
    }

    private JsonNode call(String method, Map<String, Object> parameters) throws Exception {
        int id = ++calls;
        ObjectNode o = JSON.createObjectNode().put("id", id).put("method", method);
        o.set("params", JSON.valueToTree(parameters));
        if (!session.isEmpty()) {
            o.put("sessionId", session);
        }
        socket.sendText(o.toString(), true).get(PATIENCE_S, TimeUnit.SECONDS);
        while (true) {
            JsonNode m = heard.poll(PATIENCE_S, TimeUnit.SECONDS);
            if (m == null) {
                throw new IOException("no answer to " + method);
            }
            if (!m.has("id")) {
                events.add(m);
            } else if (m.get("id").asInt() == id) {
                if (m.has("error")) {
                    throw new IOException(method + ": " + m.get("error"));
                }
                return m.get("result");
            }
        }
    }

    /** Opens a file and waits until a condition in the page's own language holds. */
    void open(Path file, String ready) throws Exception {
        call("Page.navigate", Map.of("url", file.toUri().toString()));
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_S);
        while (!evaluate(ready).asBoolean(false)) {
            if (System.nanoTime() > end) {
                throw new IOException("the page did not get ready: " + errors());
            }
            Thread.sleep(100);
        }
    }

    /** Light or dark, as the page's reader may have set it. */
    void prefer(String scheme) throws Exception {
        call(
                "Emulation.setEmulatedMedia",
                Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
        frame();
    }

    JsonNode evaluate(String expression) throws Exception {
        JsonNode r =
                call("Runtime.evaluate", Map.of("expression", expression, "returnByValue", true, "awaitPromise", true));
        if (r.has("exceptionDetails")) {
            throw new IOException(expression + ": " + r.get("exceptionDetails"));
        }
        JsonNode value = r.get("result").get("value");
        return value == null ? JSON.nullNode() : value;
    }

    /** Waits until what was asked for is on the screen. */
    private void frame() throws Exception {
        evaluate("new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))");
    }

    /** Drags with the left button held. */
    void drag(double fromX, double fromY, double toX, double toY) throws Exception {
        mouse("mousePressed", fromX, fromY, 1);
        for (int i = 1; i <= 8; i++) {
            mouse("mouseMoved", fromX + i * (toX - fromX) / 8, fromY + i * (toY - fromY) / 8, 1);
        }
        mouse("mouseReleased", toX, toY, 0);
        frame();
    }

    void point(double x, double y) throws Exception {
        mouse("mouseMoved", x, y, 0);
        frame();
    }

    private void mouse(String type, double x, double y, int buttons) throws Exception {
        String button = type.equals("mouseMoved") && buttons == 0 ? "none" : "left";
        call(
                "Input.dispatchMouseEvent",
                Map.of("type", type, "x", x, "y", y, "button", button, "buttons", buttons, "clickCount", 1));
    }

    /** The window as it looks now. */
    BufferedImage picture() throws Exception {
        frame();
        String data = call("Page.captureScreenshot", Map.of("format", "png"))
                .get("data")
                .asText();
        return ImageIO.read(new ByteArrayInputStream(Base64.getDecoder().decode(data)));
    }

    /** Addresses that the page asked for, its own and those inside it left out. */
    List<String> requests() {
        return events.stream()
                .filter(e -> e.get("method").asText().equals("Network.requestWillBeSent"))
                .map(e -> e.get("params").get("request").get("url").asText())
                .filter(u -> !u.startsWith("data:") && !u.startsWith("file:") && !u.startsWith("blob:"))
                .toList();
    }

    /** What went wrong in the page. */
    List<String> errors() {
        return events.stream()
                .filter(e -> e.get("method").asText().equals("Runtime.exceptionThrown")
                        || (e.get("method").asText().equals("Runtime.consoleAPICalled")
                                && e.get("params").get("type").asText().equals("error")))
                .map(JsonNode::toString)
                .toList();
    }

    @Override
    public void close() throws IOException {
        session = "";
        try {
            socket.sendText("{\"id\":0,\"method\":\"Browser.close\"}", true).get(5, TimeUnit.SECONDS);
            if (!process.waitFor(10, TimeUnit.SECONDS)) {
                kill();
            }
        } catch (ExecutionException | TimeoutException e) {
            kill();
        } catch (InterruptedException e) {
            kill();
            Thread.currentThread().interrupt();
        }
        try (Stream<Path> all = Files.walk(folder)) {
            all.sorted(Comparator.reverseOrder()).forEach(p -> p.toFile().delete());
        }
    }

    private void kill() {
        process.descendants().forEach(ProcessHandle::destroyForcibly);
        process.destroyForcibly();
    }
}
