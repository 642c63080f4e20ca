package weltwright.units;

import java.util.function.Function;
import weltwright.error.UserFacingException;

/**
 * An error that the user can correct and whose message has lengths: it can be told in either unit. Its own message is
 * in mm.
 */
public final class UnitAwareException extends UserFacingException {
    private static final long serialVersionUID = 1L;

    private final String inInches;

    /**
     * Creates the error from its sentences in a unit.
     *
     * @param whatIsWrong one sentence with a full stop
     * @param whatToDo one sentence with a full stop, which begins with a verb
     */
    public UnitAwareException(Function<MeasureUnit, String> whatIsWrong, Function<MeasureUnit, String> whatToDo) {
        super(whatIsWrong.apply(MeasureUnit.MILLIMETRE), whatToDo.apply(MeasureUnit.MILLIMETRE));
        inInches = whatIsWrong.apply(MeasureUnit.INCH) + " " + whatToDo.apply(MeasureUnit.INCH);
    }

    /** Returns the message with lengths in a unit. */
    public String messageIn(MeasureUnit unit) {
        return unit == MeasureUnit.INCH ? inInches : getMessage();
    }
}
