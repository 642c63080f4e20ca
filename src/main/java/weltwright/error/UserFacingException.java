package weltwright.error;

import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Signals an error that the user can correct, such as a photo without a sheet, an unreadable length or a
 * write-protected folder. The message is for the user: what is wrong, then what to do next, in one or two plain
 * sentences.
 *
 * <p>The command line prints the message and ends with an exit code other than 0; the window shows it. Every other
 * exception is a defect of the program and goes to the {@link DefectLog}.
 */
public class UserFacingException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /**
     * @param whatIsWrong one sentence with a full stop
     * @param whatToDo one sentence with a full stop, which begins with a verb
     */
    public UserFacingException(String whatIsWrong, String whatToDo) {
        this(whatIsWrong, whatToDo, null);
    }

    /** @param cause the underlying exception, if there is one */
    public UserFacingException(String whatIsWrong, String whatToDo, @Nullable Throwable cause) {
        super(Objects.requireNonNull(whatIsWrong) + " " + Objects.requireNonNull(whatToDo), cause);
    }

    /**
     * Creates an exception with the message of another, for a subclass that adds where it arose.
     *
     * @param cause the other
     */
    protected UserFacingException(UserFacingException cause) {
        super(cause.getMessage(), cause);
    }

    @Override
    public String getMessage() {
        return Objects.requireNonNull(super.getMessage());
    }
}
