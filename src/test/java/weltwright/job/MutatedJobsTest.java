package weltwright.job;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.LongRun;
import weltwright.Mutation;
import weltwright.error.UserFacingException;
import weltwright.image.Photo;
import weltwright.sheath.MeasuredFaults;
import weltwright.sheath.hardware.HardwareList;
import weltwright.sheath.pattern.Pattern;
import weltwright.trace.ProgressListener;

/**
 * Job files that are damaged at random, and such as somebody edited: values that are others, of another kind, missing,
 * or there twice, under a right checksum. Each is refused by a {@link UserFacingException}, or is a job that is kept as
 * it was read and gives a {@link UserFacingException} or a pattern that {@link MeasuredFaults} finds sound.
 */
class MutatedJobsTest {
    /** Of one thread on the processor, so that other work on the machine is no hang; a job takes some milliseconds. */
    private static final long LONGEST_MS = 5000;

    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    Path folder;

    private enum Outcome {
        REFUSED,
        READ_AS_IT_WAS,
        READ_WITHOUT_PATTERN,
        READ_WITH_PATTERN
    }

    private record Original(Job job, byte[] file) {}

    /** Values of each field of all originals, under its name. */
    private final Map<String, List<JsonNode>> known = new HashMap<>();

    @Test
    void nothingIsWrongWithoutAWord() throws IOException {
        long seed = LongRun.seed(getClass());
        int tries = LongRun.tries(120, 20_000);
        Random random = new Random(seed);
        Path file = folder.resolve("job.wwj");
        List<Original> originals = originals();
        Map<Outcome, Integer> outcomes = new EnumMap<>(Outcome.class);
        List<String> wrong = new ArrayList<>();
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        long slowestMs = 0;
        for (Original original : originals) {
            learn(JSON.readTree(entry(original.file(), "job.json")));
        }
        for (int i = 0; i < tries; i++) {
            long own = random.nextLong();
            long begun = threads.getCurrentThreadCpuTime();
            try {
                Random mutating = new Random(own);
                Original original = originals.get(mutating.nextInt(originals.size()));
                boolean edited = mutating.nextBoolean();
                byte[] whole = original.file();
                Files.write(file, edited ? edited(whole, mutating) : Mutation.of(whole, mutating));
                outcomes.merge(outcome(file, original.job(), edited), 1, Integer::sum);
            } catch (RuntimeException | Error defect) {
                wrong.add(own + ": " + defect);
            }
            slowestMs = Math.max(slowestMs, (threads.getCurrentThreadCpuTime() - begun) / 1_000_000);
        }
        System.out.println("MutatedJobsTest: " + tries + " jobs, " + outcomes + ", slowest " + slowestMs
                + " ms of the processor, wrong "
                + wrong.size());
        assertThat(wrong).isEmpty();
        assertThat(slowestMs).as("a hang").isLessThan(LONGEST_MS);
        assertThat(outcomes.getOrDefault(Outcome.READ_WITH_PATTERN, 0))
                .as("enough of them make a pattern")
                .isGreaterThan(tries / 30);
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files).as("nothing else is written").containsExactly(file);
        }
    }

    /**
     * One with every field filled in; one as it was traced from a photo; and that one with the choices of the first.
     */
    private static List<Original> originals() throws IOException {
        Job full = TestJobs.full();
        Photo photo = Photo.read(Path.of("sample-images", "drop-point.jpg"));
        Job traced = Job.begin(LocalDate.of(2024, 2, 29))
                .assumingUsualThicknesses()
                .withPhoto(photo)
                .traced(ProgressListener.NONE);
        List<Original> originals = new ArrayList<>();
        Job small = withSmallPhoto(traced);
        for (Job job : List.of(full, small, small.withSpec(full.spec().withHardware(HardwareList.USUAL)))) {
            ByteArrayOutputStream file = new ByteArrayOutputStream();
            JobFile.write(job, file);
            originals.add(new Original(job, file.toByteArray()));
        }
        return originals;
    }

    /** Of a megabyte of photo nearly every damage would be in the photo. */
    private static Job withSmallPhoto(Job job) {
        return new Job(
                job.customer(),
                job.knifeName(),
                job.begun(),
                job.due(),
                job.finished(),
                job.notes(),
                Optional.of(TestJobs.photo()),
                job.settings(),
                job.trace(),
                job.silhouette(),
                job.unsure(),
                job.calipers(),
                job.spineOnLeft(),
                job.shaping(),
                job.spec(),
                job.cutting(),
                job.workDone(),
                job.typed());
    }

    private static Outcome outcome(Path file, Job original, boolean edited) throws IOException {
        Job job;
        try {
            job = JobFile.read(file);
        } catch (UserFacingException trouble) {
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
        Pattern pattern;
        try {
            pattern = job.pattern();
        } catch (UserFacingException trouble) {
            return Outcome.READ_WITHOUT_PATTERN;
        }
        assertThat(MeasuredFaults.of(pattern, job.spec())).isEmpty();
        return Outcome.READ_WITH_PATTERN;
    }

    /** One to three values of the job are others; the photo stays. */
    private byte[] edited(byte[] whole, Random random) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(whole));
                ZipOutputStream out = new ZipOutputStream(bytes)) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                byte[] content = zip.readAllBytes();
                out.putNextEntry(new ZipEntry(entry.getName()));
                out.write(entry.getName().equals("job.json") ? edited(JSON.readTree(content), random) : content);
            }
        }
        return bytes.toByteArray();
    }

    private static byte[] entry(byte[] whole, String name) throws IOException {
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(whole))) {
            ZipEntry entry = zip.getNextEntry();
            while (!entry.getName().equals(name)) {
                entry = zip.getNextEntry();
            }
            return zip.readAllBytes();
        }
    }

    private void learn(JsonNode node) {
        node.properties()
                .forEach(field -> known.computeIfAbsent(field.getKey(), name -> new ArrayList<>())
                        .add(field.getValue()));
        node.forEach(this::learn);
    }

    private byte[] edited(JsonNode job, Random random) throws IOException {
        boolean plausible = random.nextInt(3) > 0;
        List<JsonNode> sections = new ArrayList<>(List.of(job));
        job.forEach(sections::add);
        sections.removeIf(section -> !section.isContainerNode() || section.isEmpty());
        for (int n = 1 + random.nextInt(3); n > 0; n--) {
            // A section first: else nearly all that changes are the nodes of the outlines.
            JsonNode section = sections.get(random.nextInt(sections.size()));
            List<JsonNode> holders = new ArrayList<>();
            if (section == job) {
                holders.add(job);
            } else {
                collect(section, holders);
            }
            JsonNode holder = holders.get(random.nextInt(holders.size()));
            if (plausible) {
                editPlausibly(holder, random);
            } else {
                edit(holder, random);
            }
            sections.removeIf(JsonNode::isEmpty);
        }
        return JSON.writeValueAsBytes(job);
    }

    private static void edit(JsonNode holder, Random random) {
        if (holder instanceof ObjectNode object) {
            String name = anyName(object, random);
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
    }

    /** Numbers near the one before, and what the same field is elsewhere: most of these can be read. */
    private void editPlausibly(JsonNode holder, Random random) {
        if (holder instanceof ObjectNode object) {
            String name = anyName(object, random);
            List<JsonNode> elsewhere = known.getOrDefault(name, List.of(object.get(name)));
            boolean near = object.get(name).isFloatingPointNumber() && random.nextBoolean();
            object.set(
                    name,
                    near
                            ? near(object.get(name), random)
                            : elsewhere.get(random.nextInt(elsewhere.size())).deepCopy());
        } else if (holder instanceof ArrayNode array) {
            int at = random.nextInt(array.size());
            if (array.get(at).isFloatingPointNumber()) {
                array.set(at, near(array.get(at), random));
            } else {
                array.insert(at, array.get(random.nextInt(array.size())).deepCopy());
            }
        }
    }

    private static JsonNode near(JsonNode number, Random random) {
        return JSON.getNodeFactory().numberNode(number.asDouble() * (0.5 + random.nextDouble()));
    }

    private static String anyName(ObjectNode object, Random random) {
        List<String> names = new ArrayList<>();
        object.fieldNames().forEachRemaining(names::add);
        return names.get(random.nextInt(names.size()));
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
