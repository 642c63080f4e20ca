package weltwright.app.gui.upload;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import weltwright.image.Photo;

/** Sends to the server as a browser does, and as none should. Status codes: RFC 9110, section 15. */
class UploadServerTest {
    private static final Path PHOTO = Path.of("sample-images", "drop-point.jpg");
    private static final int LIMIT_BYTES = 2_000_000;
    private static final int BEGUN_BYTES = 1000;

    private final HttpClient client = HttpClient.newHttpClient();

    private final BlockingQueue<Photo> received = new LinkedBlockingQueue<>();
    private final CountDownLatch timeUp = new CountDownLatch(1);
    private UploadServer server;

    @BeforeEach
    void start() {
        server = start(Duration.ofMinutes(1));
    }

    private UploadServer start(Duration limit) {
        return UploadServer.start(
                InetAddress.getLoopbackAddress(), limit, LIMIT_BYTES, received::add, timeUp::countDown);
    }

    @AfterEach
    void close() {
        server.close();
    }

    private HttpResponse<String> get(URI uri) throws IOException, InterruptedException {
        return client.send(HttpRequest.newBuilder(uri).build(), BodyHandlers.ofString());
    }

    private HttpResponse<String> post(URI uri, HttpRequest.BodyPublisher body)
            throws IOException, InterruptedException {
        return client.send(HttpRequest.newBuilder(uri).POST(body).build(), BodyHandlers.ofString());
    }

    @Test
    void hasAPathOf128RandomBits() {
        assertThat(server.uri().getPath()).matches("/[0-9A-Za-z_-]{22}");
        try (UploadServer other = start(Duration.ofMinutes(1))) {
            assertThat(other.uri().getPath()).isNotEqualTo(server.uri().getPath());
        }
    }

    @Test
    void givesAPageThatLoadsNothingFromElsewhereAndAsksForJpeg() throws Exception {
        HttpResponse<String> page = get(server.uri());
        assertThat(page.statusCode()).isEqualTo(200);
        assertThat(page.body())
                .contains("accept=\"image/jpeg\"")
                .doesNotContain("http:", "https:", "{title}", "{nonce}");
        assertThat(page.headers().firstValue("Content-Security-Policy").orElse(""))
                .contains("default-src 'none'");
        assertThat(page.headers().firstValue("Cache-Control")).contains("no-store");
    }

    @Test
    void takesAPhotoAsAnOpenedFile() throws Exception {
        HttpResponse<String> answer = post(server.uri(), BodyPublishers.ofFile(PHOTO));
        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(received.take().bytes()).isEqualTo(Photo.read(PHOTO).bytes());
    }

    @Test
    void findsNothingAtAnyOtherPath() throws Exception {
        for (String path : List.of("/", "/favicon.ico", server.uri().getPath() + "/", "/" + "0".repeat(32))) {
            URI other = server.uri().resolve(path);
            assertThat(get(other).statusCode()).as(path).isEqualTo(404);
            assertThat(get(other).body()).isEmpty();
            assertThat(post(other, BodyPublishers.ofByteArray(new byte[10])).statusCode())
                    .isEqualTo(404);
        }
        assertThat(received).isEmpty();
    }

    @Test
    void refusesOtherMethods() throws Exception {
        HttpRequest delete = HttpRequest.newBuilder(server.uri()).DELETE().build();
        assertThat(client.send(delete, BodyHandlers.ofString()).statusCode()).isEqualTo(405);
    }

    @Test
    void refusesWhatIsTooLargeWhetherItSaysSoOrNot() throws Exception {
        byte[] large = new byte[LIMIT_BYTES + 1];
        assertThat(post(server.uri(), BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(large)))
                        .statusCode())
                .isEqualTo(413);
        assertThat(post(server.uri(), BodyPublishers.ofByteArray(large)).statusCode())
                .isEqualTo(413);
        assertThat(received).isEmpty();
    }

    @Test
    void refusesWhatIsNoPictureAndSaysSo() throws Exception {
        HttpResponse<String> answer = post(server.uri(), BodyPublishers.ofString("Dear customer"));
        assertThat(answer.statusCode()).isEqualTo(415);
        assertThat(answer.body()).contains("not a picture").doesNotContain("Exception");
        assertThat(post(server.uri(), BodyPublishers.noBody()).statusCode()).isEqualTo(415);
        assertThat(received).isEmpty();
    }

    /** While one picture is on its way, all others are told to come again; afterwards the next is taken. */
    @Test
    void takesOneOfManyAtATime() throws Exception {
        byte[] photo = Files.readAllBytes(PHOTO);
        try (Socket slow = begin(photo)) {
            List<CompletableFuture<HttpResponse<String>>> others = new ArrayList<>();
            for (int i = 0; i < 20; i++) {
                others.add(client.sendAsync(
                        HttpRequest.newBuilder(server.uri())
                                .POST(BodyPublishers.ofByteArray(photo))
                                .build(),
                        BodyHandlers.ofString()));
            }
            for (CompletableFuture<HttpResponse<String>> other : others) {
                assertThat(other.get().statusCode()).isEqualTo(503);
            }
            slow.getOutputStream().write(photo, BEGUN_BYTES, photo.length - BEGUN_BYTES);
            slow.getOutputStream().flush();
            assertThat(new String(slow.getInputStream().readNBytes(12), StandardCharsets.US_ASCII))
                    .isEqualTo("HTTP/1.1 200");
        }
        assertThat(received).hasSize(1);
        int status = 503; // until the first one's answer is wholly sent
        for (int i = 0; i < 100 && status == 503; i++) {
            Thread.sleep(20);
            status = post(server.uri(), BodyPublishers.ofByteArray(photo)).statusCode();
        }
        assertThat(status).isEqualTo(200);
    }

    @Test
    void dropsWhatIsOnItsWayWhenItIsClosed() throws Exception {
        try (Socket slow = begin(Files.readAllBytes(PHOTO))) {
            server.close();
            assertThat(answered(slow)).isFalse();
        }
        assertThat(received).isEmpty();
        assertThatThrownBy(() -> get(server.uri())).isInstanceOf(IOException.class);
    }

    private static boolean answered(Socket socket) {
        try {
            return socket.getInputStream().read() >= 0;
        } catch (IOException e) {
            return false; // reset
        }
    }

    /** Sends the beginning of a photo, and returns once the server takes no other meanwhile. */
    private Socket begin(byte[] photo) throws IOException, InterruptedException {
        Socket socket =
                new Socket(InetAddress.getLoopbackAddress(), server.uri().getPort());
        String head = "POST " + server.uri().getPath() + " HTTP/1.1\r\nHost: trial\r\nContent-Length: " + photo.length
                + "\r\n\r\n";
        socket.getOutputStream().write(head.getBytes(StandardCharsets.US_ASCII));
        socket.getOutputStream().write(photo, 0, BEGUN_BYTES);
        socket.getOutputStream().flush();
        do {
            Thread.sleep(200); // asked sooner, the server may take the question for the photo
        } while (post(server.uri(), BodyPublishers.ofByteArray(new byte[10])).statusCode() != 503);
        return socket;
    }

    @Test
    void closesItselfWhenTheTimeIsUp() throws Exception {
        try (UploadServer brief = start(Duration.ofMillis(1))) {
            assertThat(timeUp.await(60, TimeUnit.SECONDS)).isTrue();
            assertThatThrownBy(() -> get(brief.uri())).isInstanceOf(IOException.class);
        }
    }
}
