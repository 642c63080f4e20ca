package weltwright.assembly;

/**
 * A constraint on the order of two operations, with its reason.
 *
 * @param why the reason, as a clause: "the groover runs along a square edge"
 */
public record OperationConstraint(Operation before, Operation after, String why) {}
