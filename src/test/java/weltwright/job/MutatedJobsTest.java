package weltwright.job;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.LongRun;
import weltwright.Mutation;
import weltwright.trouble.Trouble;

/**
 * Job files that are damaged at random, and such as somebody edited: values that are others, of another kind, missing, or
 * there twice, under a right checksum. Each is refused by a {@link Trouble}, or is a job that is kept as it was read and
 * gives a pattern or a {@link Trouble}.
 */
class MutatedJobsTest {
    private static final int LONGEST_MS = 5000;

    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    Path folder;

    private enum Outcome {
        REFUSED,
        READ_AS_IT_WAS,
        READ_WITHOUT_PATTERN,
        READ_WITH_PATTERN
    }

    @Test
    void nothingIsWrongWithoutAWord() throws IOException {
        long seed = LongRun.seed(getClass());
        int tries = LongRun.tries(300, 20_000);
        Random random = new Random(seed);
        Path file = folder.resolve("job.wwj");
        JobFile.write(Jobs.full(), file);
        Job original = JobFile.read(file);
        byte[] whole = Files.readAllBytes(file);
        Map<Outcome, Integer> outcomes = new EnumMap<>(Outcome.class);
        List<String> wrong = new ArrayList<>();
        long slowestMs = 0;
        for (int i = 0; i < tries; i++) {
            long own = random.nextLong();
            long begun = System.nanoTime();
            try {
                Random mutating = new Random(own);
                boolean edited = mutating.nextBoolean();
                Files.write(file, edited ? edited(whole, mutating) : Mutation.of(whole, mutating));
                outcomes.merge(outcome(file, original, edited), 1, Integer::sum);
            } catch (RuntimeException | Error defect) {
                wrong.add(own + ": " + defect);
            }
            slowestMs = Math.max(slowestMs, (System.nanoTime() - begun) / 1_000_000);
        }
        System.out.println("MutatedJobsTest: " + tries + " jobs, " + outcomes + ", slowest " + slowestMs + " ms, wrong "
                + wrong.size());
        assertThat(wrong).isEmpty();
        assertThat(slowestMs).as("a hang").isLessThan(10 * LONGEST_MS);
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files).as("nothing else is written").containsExactly(file);
        }
    }

    private static Outcome outcome(Path file, Job original, boolean edited) throws IOException {
        Job job;
        try {
            job = JobFile.read(file);
        } catch (Trouble trouble) {
            return Outcome.REFUSED;
        }
        if (job.equals(original)) {
            return Outcome.READ_AS_IT_WAS;
        }
        assertThat(edited).as("a damaged file was read as another job").isTrue();
        ByteArrayOutputStream kept = new ByteArrayOutputStream();
        JobFile.write(job, kept);
        Files.write(file, kept.toByteArray());
        assertThat(JobFile.read(file)).as("saved and opened").isEqualTo(job);
        try {
            assertThat(job.pattern().seams()).isNotNull();
            return Outcome.READ_WITH_PATTERN;
        } catch (Trouble trouble) {
            return Outcome.READ_WITHOUT_PATTERN;
        }
    }

    /** One to three values of the job are others; the photo stays. */
    private static byte[] edited(byte[] whole, Random random) throws IOException {
        Path copy = Files.createTempFile("edited", JobFile.EXTENSION);
        try {
            Files.write(copy, whole);
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            try (ZipFile zip = new ZipFile(copy.toFile());
                    ZipOutputStream out = new ZipOutputStream(bytes)) {
                Iterator<? extends ZipEntry> entries = zip.entries().asIterator();
                while (entries.hasNext()) {
                    ZipEntry entry = entries.next();
                    byte[] content = zip.getInputStream(entry).readAllBytes();
                    out.putNextEntry(new ZipEntry(entry.getName()));
                    out.write(entry.getName().equals("job.json") ? edited(JSON.readTree(content), random) : content);
                }
            }
            return bytes.toByteArray();
        } finally {
            Files.delete(copy);
        }
    }

    private static byte[] edited(JsonNode job, Random random) throws IOException {
        List<JsonNode> holders = new ArrayList<>();
        collect(job, holders);
        for (int n = 1 + random.nextInt(3); n > 0; n--) {
            JsonNode holder = holders.get(random.nextInt(holders.size()));
            if (holder instanceof ObjectNode object) {
                List<String> names = new ArrayList<>();
                object.fieldNames().forEachRemaining(names::add);
                String name = names.get(random.nextInt(names.size()));
                if (random.nextInt(6) == 0) {
                    object.remove(name);
                } else {
                    object.set(name, other(object.get(name), random));
                }
            } else if (holder instanceof ArrayNode array) {
                int at = random.nextInt(array.size());
                switch (random.nextInt(6)) {
                    case 0 -> array.remove(at);
                    case 1 -> array.insert(at, array.get(at).deepCopy());
                    default -> array.set(at, other(array.get(at), random));
                }
            }
            holders.removeIf(JsonNode::isEmpty);
        }
        return JSON.writeValueAsBytes(job);
    }

    private static void collect(JsonNode node, List<JsonNode> holders) {
        if (node.isContainerNode() && !node.isEmpty()) {
            holders.add(node);
            node.forEach(child -> collect(child, holders));
        }
    }

    private static JsonNode other(JsonNode value, Random random) {
        double number = value.isNumber() ? value.asDouble() : random.nextInt(100);
        return switch (random.nextInt(9)) {
            case 0 -> JSON.getNodeFactory().nullNode();
            case 1 -> JSON.getNodeFactory().textNode("x".repeat(random.nextInt(50)));
            case 2 -> JSON.getNodeFactory().booleanNode(random.nextBoolean());
            case 3 -> JSON.getNodeFactory().numberNode(-number);
            case 4 -> JSON.getNodeFactory().numberNode(number * Math.pow(10, random.nextInt(40) - 20));
            case 5 -> JSON.getNodeFactory().numberNode(random.nextInt(20) - 5);
            default -> JSON.getNodeFactory().numberNode(number * (0.5 + random.nextDouble()));
        };
    }
}
