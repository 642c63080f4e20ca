package weltwright.assembly;

/**
 * What has to come before what, and why.
 *
 * @param why half a sentence, for the one who wonders: "the groover runs along a square edge"
 */
public record OperationConstraint(Operation before, Operation after, String why) {}
