package weltwright.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import weltwright.trouble.Trouble;

class BothTest {
    private static final Trouble TROUBLE = new Trouble("No lamp is on.", "Switch one on.");

    @Test
    void givesBoth() {
        assertThat(Both.of(() -> "edge", () -> 7)).isEqualTo(new Both<>("edge", 7));
    }

    @Test
    void throwsWhatTheFirstThrew() {
        assertThatThrownBy(() -> Both.of(BothTest::trouble, () -> 7)).isSameAs(TROUBLE);
    }

    @Test
    void throwsWhatTheSecondThrewWhenTheFirstIsDone() {
        AtomicBoolean done = new AtomicBoolean();

        assertThatThrownBy(() -> Both.of(() -> slowly(done), BothTest::trouble)).isSameAs(TROUBLE);

        assertThat(done).isTrue();
    }

    private static int trouble() {
        throw TROUBLE;
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
