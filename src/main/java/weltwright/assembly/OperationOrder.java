package weltwright.assembly;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.stream.Collectors;
import weltwright.sheath.pattern.Piece;

/**
 * Operations in an order that respects all constraints, by Kahn's algorithm.
 *
 * <p>Of the operations that wait for no other, the next is the one whose {@link WorkPhase}, then whose
 * {@link OperationKind} comes first, and of equals the one added first. So equal patterns give equal orders, and like
 * work stays together. (A. B. Kahn, "Topological sorting of large networks", Communications of the ACM 5 (11), 1962.)
 *
 * @param operations first to last
 * @param constraints respected by the order
 */
public record OperationOrder(List<Operation> operations, List<OperationConstraint> constraints) {

    public OperationOrder {
        operations = List.copyOf(operations);
        constraints = List.copyOf(constraints);
    }

    /**
     * Returns an identifier of each operation, in their order. It tells the work and the pieces and not the sizes, so
     * that it stays the same as long as the operation does, in each language: "join/glue/body+welt". A second operation
     * alike has a 2.
     *
     * @param pieces of the pattern
     */
    public List<String> identifiers(List<Piece> pieces) {
        Map<String, String> ids = pieces.stream().collect(Collectors.toMap(Piece::name, Piece::id));
        Map<String, Integer> alike = new HashMap<>();
        List<String> identifiers = new ArrayList<>();
        for (Operation operation : operations) {
            String name = (operation.phase() + "/" + operation.step() + "/"
                            + operation.pieces().stream().map(ids::get).collect(Collectors.joining("+")))
                    .toLowerCase(Locale.ROOT);
            int number = alike.merge(name, 1, Integer::sum);
            identifiers.add(number == 1 ? name : name + "/" + number);
        }
        return identifiers;
    }

    /** Returns the total estimated time, with waits one after another, as for a single sheath. */
    public OperationTime time() {
        return operations.stream().map(Operation::time).reduce(OperationTime.NONE, OperationTime::plus);
    }

    /**
     * Puts operations in order.
     *
     * @throws IllegalStateException where the constraints have a cycle, which is a defect of the program
     */
    static OperationOrder of(List<Operation> named, Collection<OperationConstraint> constraints) {
        Map<Operation, Integer> place = new HashMap<>();
        named.forEach(operation -> place.put(operation, place.size()));
        Map<Operation, Integer> waitsFor = new HashMap<>();
        Map<Operation, List<Operation>> opens = new HashMap<>();
        for (OperationConstraint constraint : constraints) {
            waitsFor.merge(constraint.after(), 1, Integer::sum);
            opens.computeIfAbsent(constraint.before(), key -> new ArrayList<>()).add(constraint.after());
        }
        PriorityQueue<Operation> ready = new PriorityQueue<>(Comparator.comparing(Operation::phase)
                .thenComparing(Operation::step)
                .thenComparing(place::get));
        named.stream().filter(operation -> !waitsFor.containsKey(operation)).forEach(ready::add);
        List<Operation> order = new ArrayList<>();
        while (!ready.isEmpty()) {
            Operation next = ready.remove();
            order.add(next);
            for (Operation opened : opens.getOrDefault(next, List.of())) {
                if (waitsFor.merge(opened, -1, Integer::sum) == 0) {
                    ready.add(opened);
                }
            }
        }
        if (order.size() < named.size()) {
            throw new IllegalStateException(named.stream()
                    .filter(operation -> !order.contains(operation))
                    .map(Operation::work)
                    .collect(Collectors.joining(" / ", "these wait for one another: ", "")));
        }
        return new OperationOrder(order, List.copyOf(constraints));
    }
}
