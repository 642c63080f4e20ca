package weltwright.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.invoke.MethodHandle;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import weltwright.LongRun;
import weltwright.Mutation;

/** Runs each fuzz target on the inputs that are kept for it, and on some mutations of them at random. */
class FuzzCorpusTest {
    static List<Class<?>> targets() {
        return FuzzTargets.ALL;
    }

    @ParameterizedTest
    @MethodSource("targets")
    void passesOnItsCorpus(Class<?> target) throws Throwable {
        MethodHandle method = FuzzTargets.method(target);
        List<Path> inputs;
        try (Stream<Path> files = Files.list(FuzzTargets.corpus(target))) {
            inputs = files.sorted().toList();
        }
        assertThat(inputs).isNotEmpty();
        Random random = new Random(LongRun.seed(target));
        for (Path input : inputs) {
            byte[] bytes = Files.readAllBytes(input);
            method.invokeExact(bytes);
            for (int i = LongRun.tries(10, 5_000); i > 0; i--) {
                method.invokeExact(Mutation.of(bytes, random));
            }
        }
        method.invokeExact(new byte[0]);
    }
}
