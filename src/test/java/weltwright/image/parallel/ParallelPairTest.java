package weltwright.image.parallel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import weltwright.error.UserFacingException;

class ParallelPairTest {
    private static final UserFacingException LAMP_OFF = new UserFacingException("No lamp is on.", "Switch one on.");

    @Test
    void givesBoth() {
        assertThat(ParallelPair.of(() -> "edge", () -> 7)).isEqualTo(new ParallelPair<>("edge", 7));
    }

    @Test
    void throwsWhatTheFirstThrew() {
        assertThatThrownBy(() -> ParallelPair.of(ParallelPairTest::failing, () -> 7))
                .isSameAs(LAMP_OFF);
    }

    @Test
    void throwsWhatTheSecondThrewWhenTheFirstIsDone() {
        AtomicBoolean done = new AtomicBoolean();

        assertThatThrownBy(() -> ParallelPair.of(() -> slowly(done), ParallelPairTest::failing))
                .isSameAs(LAMP_OFF);

        assertThat(done).isTrue();
    }

    /** Whoever reports an error tells one of memory from a defect by its class. */
    @Test
    void throwsTheErrorOfTheFirst() {
        OutOfMemoryError full = new OutOfMemoryError();

        assertThatThrownBy(() -> ParallelPair.of(
                        () -> {
                            throw full;
                        },
                        () -> 7))
                .isSameAs(full);
    }

    private static int failing() {
        throw LAMP_OFF;
    }

    private static int slowly(AtomicBoolean done) {
        try {
            Thread.sleep(50);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
        done.set(true);
        return 7;
    }
}
