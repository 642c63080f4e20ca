package weltwright.trace;

import weltwright.trouble.Trouble;

/** What the knife lies on was seen, and the picture leaves its size open: that has to be told. */
public final class OpenGround extends Trouble {
    private static final long serialVersionUID = 1L;

    OpenGround(String whatIsSeen, String whatToDo) {
        super(whatIsSeen, whatToDo);
    }
}
