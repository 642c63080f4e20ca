package weltwright.error;

import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Something that the user can put right: a picture without a sheet, a length that cannot be read, a folder that cannot
 * be written. Its message is for the user: what is wrong, then what to do next, in one or two plain sentences.
 *
 * <p>The command line prints the message and ends with a code other than 0; the window shows it. Every other exception
 * is a defect of the program.
 */
public class UserFacingException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /**
     * @param whatIsWrong one sentence, with its full stop
     * @param whatToDo one sentence that begins with a verb, with its full stop
     */
    public UserFacingException(String whatIsWrong, String whatToDo) {
        this(whatIsWrong, whatToDo, null);
    }

    /** The same, keeping the exception behind it for the log of a developer. */
    public UserFacingException(String whatIsWrong, String whatToDo, @Nullable Throwable cause) {
        super(Objects.requireNonNull(whatIsWrong) + " " + Objects.requireNonNull(whatToDo), cause);
    }

    @Override
    public String getMessage() {
        return Objects.requireNonNull(super.getMessage());
    }
}
