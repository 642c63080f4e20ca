package weltwright.app.gui.upload;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.InputStream;
import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.time.Duration;
import java.util.Base64;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import weltwright.error.UserFacingException;
import weltwright.image.Photo;
import weltwright.message.Messages;

/**
 * Takes photos over HTTP at one address for a limited time. Everything is behind a random path of 128 bits: {@code GET}
 * gives a page with one button, {@code POST} takes the bytes of one picture file. All other paths are not found. One
 * picture is taken at a time, within the limits that opened files have.
 */
public final class UploadServer implements AutoCloseable {
    private static final Messages MESSAGES = Messages.of(UploadServer.class);
    private static final int KEY_BYTES = 16;

    /** As a photo's file may have at most. */
    static final int GREATEST_BYTES = 200_000_000;

    /** Chosen by eye. */
    private static final int DROPPED_BYTES = 20_000_000;

    private static final int THREADS = 4;
    private static final int BACKLOG = 8;

    private static final int OK = 200;
    private static final int NOT_FOUND = 404;
    private static final int METHOD_NOT_ALLOWED = 405;
    private static final int TOO_LARGE = 413;
    private static final int UNSUPPORTED = 415;
    private static final int BUSY = 503;

    static {
        // Requests that do not come to an end in this many seconds are dropped; read once by the JDK's server.
        if (System.getProperty("sun.net.httpserver.maxReqTime") == null) {
            System.setProperty("sun.net.httpserver.maxReqTime", "120");
        }
    }

    private final HttpServer server;
    private final String path;
    private final URI uri;
    private final int greatestBytes;
    private final Consumer<Photo> receiver;
    private final Semaphore receiving = new Semaphore(1);
    private final ExecutorService executor = Executors.newFixedThreadPool(THREADS, UploadServer::thread);
    private final ScheduledExecutorService clock = Executors.newSingleThreadScheduledExecutor(UploadServer::thread);

    private UploadServer(InetAddress address, int greatestBytes, Consumer<Photo> receiver) throws IOException {
        this.greatestBytes = greatestBytes;
        this.receiver = receiver;
        byte[] key = new byte[KEY_BYTES];
        new SecureRandom().nextBytes(key);
        path = "/" + Base64.getUrlEncoder().withoutPadding().encodeToString(key);
        server = HttpServer.create(new InetSocketAddress(address, 0), BACKLOG);
        server.setExecutor(executor);
        server.createContext("/", this::handle);
        uri = URI.create("http://" + host(address) + ":" + server.getAddress().getPort() + path);
    }

    private static Thread thread(Runnable runnable) {
        Thread thread = new Thread(runnable, "upload");
        thread.setDaemon(true);
        return thread;
    }

    /** Returns an address as a URI has it (RFC 3986, 3.2.2). */
    private static String host(InetAddress address) {
        String text = address.getHostAddress();
        int zone = text.indexOf('%');
        return address instanceof Inet6Address ? "[" + (zone < 0 ? text : text.substring(0, zone)) + "]" : text;
    }

    /**
     * Starts a server.
     *
     * @param address of this computer at which it listens, and at no other
     * @param limit after which it closes itself
     * @param receiver takes each photo; called on a thread of the server
     * @param onTimeUp called when the time is up, on a thread of the server
     * @throws UserFacingException where the address cannot be listened at
     */
    public static UploadServer start(InetAddress address, Duration limit, Consumer<Photo> receiver, Runnable onTimeUp) {
        return start(address, limit, GREATEST_BYTES, receiver, onTimeUp);
    }

    static UploadServer start(
            InetAddress address, Duration limit, int greatestBytes, Consumer<Photo> receiver, Runnable onTimeUp) {
        try {
            UploadServer started = new UploadServer(address, greatestBytes, receiver);
            started.server.start();
            var unused = started.clock.schedule(
                    () -> {
                        started.close();
                        onTimeUp.run();
                    },
                    limit.toMillis(),
                    TimeUnit.MILLISECONDS);
            return started;
        } catch (IOException e) {
            throw new UserFacingException(
                    MESSAGES.text("address.refused", address.getHostAddress()), MESSAGES.text("address.other"), e);
        }
    }

    /** Returns the address for the phone's browser. */
    public URI uri() {
        return uri;
    }

    /** Ends the server; a photo that is being received is dropped. */
    @Override
    public void close() {
        server.stop(0);
        executor.shutdownNow();
        clock.shutdown();
    }

    private void handle(HttpExchange exchange) throws IOException {
        try (exchange) {
            Headers headers = exchange.getResponseHeaders();
            headers.set("Cache-Control", "no-store");
            headers.set("Referrer-Policy", "no-referrer");
            headers.set("X-Content-Type-Options", "nosniff");
            if (!exchange.getRequestURI().getRawPath().equals(path)) {
                exchange.sendResponseHeaders(NOT_FOUND, -1);
                return;
            }
            switch (exchange.getRequestMethod()) {
                case "GET" -> {
                    UploadPage page = UploadPage.create();
                    headers.set("Content-Security-Policy", page.contentSecurityPolicy());
                    send(exchange, OK, "text/html; charset=utf-8", page.html());
                }
                case "POST" -> receive(exchange);
                default -> {
                    headers.set("Allow", "GET, POST");
                    exchange.sendResponseHeaders(METHOD_NOT_ALLOWED, -1);
                }
            }
        }
    }

    private void receive(HttpExchange exchange) throws IOException {
        if (!receiving.tryAcquire()) {
            drop(exchange.getRequestBody());
            answer(exchange, BUSY, MESSAGES.text("answer.busy"));
            return;
        }
        try {
            Optional<byte[]> file = read(exchange);
            if (file.isEmpty()) {
                answer(exchange, TOO_LARGE, MESSAGES.text("answer.large"));
                return;
            }
            Photo photo = Photo.of(MESSAGES.text("photo.name"), file.get());
            receiver.accept(photo);
            answer(exchange, OK, MESSAGES.text("answer.received"));
        } catch (UserFacingException e) {
            answer(exchange, UNSUPPORTED, e.getMessage());
        } finally {
            receiving.release();
        }
    }

    /**
     * Reads the whole body; empty where it is larger than it may be, known from its header or as it comes. Then some
     * more is read and dropped.
     */
    private Optional<byte[]> read(HttpExchange exchange) throws IOException {
        String length = exchange.getRequestHeaders().getFirst("Content-Length");
        boolean saidTooLarge = length != null && Long.parseLong(length) > greatestBytes;
        try (InputStream body = exchange.getRequestBody()) {
            byte[] bytes = saidTooLarge ? new byte[0] : body.readNBytes(greatestBytes + 1);
            if (saidTooLarge || bytes.length > greatestBytes) {
                drop(body);
                return Optional.empty();
            }
            return Optional.of(bytes);
        }
    }

    /** Reads and drops what a client still sends, up to a bound: one that is still sending does not read an answer. */
    private static void drop(InputStream body) throws IOException {
        byte[] buffer = new byte[1 << 16];
        for (int left = DROPPED_BYTES, read = 0; left > 0 && read >= 0; left -= read) {
            read = body.read(buffer);
        }
    }

    private static void answer(HttpExchange exchange, int status, String text) throws IOException {
        send(exchange, status, "text/plain; charset=utf-8", text);
    }

    private static void send(HttpExchange exchange, int status, String type, String text) throws IOException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        exchange.getResponseHeaders().set("Content-Type", type);
        exchange.sendResponseHeaders(status, bytes.length);
        exchange.getResponseBody().write(bytes);
    }
}
