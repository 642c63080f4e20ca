package weltwright.app.gui.upload;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.File;
import java.io.IOException;
import java.net.InetAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.net.http.WebSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.image.Photo;

/**
 * Sends a photo with a real browser without a screen, by the page's own button: Chromium, driven by the Chrome DevTools
 * Protocol.
 */
class UploadByBrowserTest {
    private static final Path PHOTO = Path.of("sample-images", "drop-point.jpg").toAbsolutePath();
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final int TIMEOUT_S = 120;

    @TempDir
    private Path profile;

    private final BlockingQueue<JsonNode> answers = new LinkedBlockingQueue<>();
    private int messages;

    @BeforeEach
    void needsABrowser() {
        assumeTrue(
                Stream.of(System.getenv("PATH").split(File.pathSeparator))
                        .anyMatch(folder -> Files.isExecutable(Path.of(folder, "chromium"))),
                "There is no Chromium for this test. Install it (Debian: apt-get install chromium).");
    }

    @Test
    void sendsAPhotoByThePagesButton() throws Exception {
        BlockingQueue<Photo> received = new LinkedBlockingQueue<>();
        try (UploadServer server =
                UploadServer.start(InetAddress.getLoopbackAddress(), Duration.ofMinutes(5), received::add, () -> {})) {
            ProcessBuilder command = new ProcessBuilder(
                            "chromium",
                            "--headless=new",
                            "--no-sandbox",
                            "--disable-gpu",
                            "--disable-dev-shm-usage",
                            "--no-first-run",
                            "--remote-debugging-port=0",
                            "--user-data-dir=" + profile,
                            "about:blank")
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD);
            command.environment().put("TMPDIR", profile.toString());
            Process chromium = command.start();
            try {
                WebSocket page = connect(chromium);
                call(page, "Page.enable", JSON.createObjectNode());
                call(
                        page,
                        "Page.navigate",
                        JSON.createObjectNode().put("url", server.uri().toString()));
                await(page, "document.readyState === 'complete' && document.getElementById('photo') !== null");
                ObjectNode files = JSON.createObjectNode();
                files.putArray("files").add(PHOTO.toString());
                files.put("nodeId", input(page));
                call(page, "DOM.setFileInputFiles", files);
                Photo photo = received.poll(TIMEOUT_S, TimeUnit.SECONDS);
                assertThat(photo).isNotNull();
                assertThat(photo.bytes()).isEqualTo(Photo.read(PHOTO).bytes());
                await(page, "document.getElementById('state').textContent.includes('arrived')");
                // A browser that is ended in another way may still write into its profile when that is deleted.
                call(page, "Browser.close", JSON.createObjectNode());
                assertThat(chromium.waitFor(TIMEOUT_S, TimeUnit.SECONDS)).isTrue();
            } finally {
                chromium.descendants().forEach(ProcessHandle::destroyForcibly);
                chromium.destroyForcibly().waitFor();
            }
        }
    }

    /** The port stands in a file of the profile once the browser listens. */
    private WebSocket connect(Process chromium) throws IOException, InterruptedException {
        Path file = profile.resolve("DevToolsActivePort");
        while (Files.notExists(file) || Files.readAllLines(file).size() < 2) {
            assertThat(chromium.isAlive()).isTrue();
            Thread.sleep(100);
        }
        String port = Files.readAllLines(file).get(0);
        HttpClient client = HttpClient.newHttpClient();
        String targets = client.send(
                        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/json/list"))
                                .build(),
                        BodyHandlers.ofString())
                .body();
        for (JsonNode target : JSON.readTree(targets)) {
            if (target.path("type").asText().equals("page")) {
                return client.newWebSocketBuilder()
                        .buildAsync(
                                URI.create(target.path("webSocketDebuggerUrl").asText()), new Answers())
                        .join();
            }
        }
        throw new IOException("no page in " + targets);
    }

    private int input(WebSocket page) throws IOException, InterruptedException {
        int root = call(page, "DOM.getDocument", JSON.createObjectNode())
                .at("/root/nodeId")
                .asInt();
        return call(
                        page,
                        "DOM.querySelector",
                        JSON.createObjectNode().put("nodeId", root).put("selector", "#photo"))
                .path("nodeId")
                .asInt();
    }

    /** Waits until an expression of JavaScript is true in the page. */
    private void await(WebSocket page, String expression) throws IOException, InterruptedException {
        boolean isTrue = false;
        while (!isTrue) {
            isTrue = call(page, "Runtime.evaluate", JSON.createObjectNode().put("expression", expression))
                    .at("/result/value")
                    .asBoolean();
        }
    }

    private JsonNode call(WebSocket page, String method, ObjectNode parameters)
            throws IOException, InterruptedException {
        int id = ++messages;
        page.sendText(
                        JSON.createObjectNode()
                                .put("id", id)
                                .put("method", method)
                                .set("params", parameters)
                                .toString(),
                        true)
                .join();
        JsonNode answer = JSON.createObjectNode();
        while (answer.path("id").asInt() != id) {
            answer = answers.poll(TIMEOUT_S, TimeUnit.SECONDS);
            assertThat(answer).as(method).isNotNull();
        }
        return answer.path("result");
    }

    private final class Answers implements WebSocket.Listener {
        private final StringBuilder text = new StringBuilder();

        @Override
        public CompletionStage<?> onText(WebSocket page, CharSequence part, boolean last) {
            text.append(part);
            if (last) {
                try {
                    answers.add(JSON.readTree(text.toString()));
                } catch (IOException e) {
                    throw new IllegalStateException(e);
                }
                text.setLength(0);
            }
            page.request(1);
            return null;
        }
    }
}
