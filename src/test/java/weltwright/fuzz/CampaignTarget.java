package weltwright.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.invoke.MethodHandle;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * What {@link FuzzCampaign} has Jazzer call: passes each input on to one fuzz target, and fails where that took more
 * than five seconds of processor time, which does not depend on what else the machine does. The target is run on its
 * corpus first, so that loading its classes is not counted.
 */
public final class CampaignTarget {
    private static final long HANG_NS = TimeUnit.SECONDS.toNanos(5);
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    private static MethodHandle method;

    private CampaignTarget() {}

    /**
     * Called by the fuzzer at its start.
     *
     * @param args name of the target's class
     */
    public static void fuzzerInitialize(String[] args) throws Throwable {
        Class<?> target = Class.forName(args[0]);
        method = FuzzTargets.method(target);
        for (Path input : inputs(target)) {
            method.invokeExact(Files.readAllBytes(input));
        }
    }

    /** Called by the fuzzer. */
    public static void fuzzerTestOneInput(byte[] input) throws Throwable {
        long begunNs = THREADS.getCurrentThreadCpuTime();
        Objects.requireNonNull(method).invokeExact(input);
        assertThat(THREADS.getCurrentThreadCpuTime() - begunNs).as("a hang").isLessThan(HANG_NS);
    }

    private static List<Path> inputs(Class<?> target) throws IOException {
        try (Stream<Path> files = Files.list(FuzzTargets.corpus(target))) {
            return files.toList();
        }
    }
}
