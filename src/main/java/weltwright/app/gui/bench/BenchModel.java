package weltwright.app.gui.bench;

import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import weltwright.app.gui.model.DerivedValue;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.assembly.AssemblyPlan;
import weltwright.assembly.Operation;
import weltwright.assembly.OperationTime;
import weltwright.job.Job;
import weltwright.message.Messages;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.units.MeasureUnit;

/**
 * The steps of the work on the present sheath, which of them are done, and which is selected. The plan is made in the
 * background, and only while the bench is visible. Used on the event thread only.
 */
final class BenchModel {
    private static final Messages TEXTS = Messages.of(BenchModel.class);

    private final JobModel model;
    private final Supplier<LocalDateTime> clock;
    private final DerivedValue<PlanInput, AssemblyPlan> planValue;
    private final List<Runnable> listeners = new ArrayList<>();
    private Optional<Pattern> pattern = Optional.empty();
    private Optional<AssemblyPlan> plan = Optional.empty();
    private List<Step> steps = List.of();
    private int selected;
    private Object openedJob = new Object();
    private boolean visible;

    /** What a plan follows from; its texts have lengths. */
    private record PlanInput(Pattern pattern, MeasureUnit unit) {}

    /**
     * A step of the work.
     *
     * @param identifier of the operation
     * @param done when it was ticked off; empty while it is not
     */
    record Step(Operation operation, String identifier, Optional<LocalDateTime> done) {}

    /** @param pattern returns the pattern of the present job; empty where there is none */
    BenchModel(JobModel model, Supplier<Optional<Pattern>> pattern, TaskQueue tasks, Supplier<LocalDateTime> clock) {
        this.model = model;
        this.clock = clock;
        planValue = new DerivedValue<>(
                tasks,
                TEXTS.text("bench-model.putting-the-work-in-order"),
                () -> pattern.get().map(made -> new PlanInput(made, model.unit())),
                input -> AssemblyPlan.of(input.pattern(), input.unit()),
                state -> {
                    this.pattern = pattern.get();
                    if (!state.computing()) {
                        plan = state.value();
                        updateSteps();
                    }
                });
        model.subscribe(this::update);
    }

    /** Adds a listener that is called whenever something here has changed. */
    void addListener(Runnable listener) {
        listeners.add(listener);
    }

    void show() {
        visible = true;
        update();
    }

    void hide() {
        visible = false;
    }

    /** Follows the job, its pattern and the unit. */
    void update() {
        if (visible) {
            planValue.update();
            updateSteps();
        }
    }

    Job job() {
        return model.job();
    }

    Optional<AssemblyPlan> plan() {
        return plan;
    }

    List<Step> steps() {
        return steps;
    }

    /** Returns the index of the selected step, which is less than their number unless there is none. */
    int selected() {
        return selected;
    }

    void select(int index) {
        if (index != selected && index >= 0 && index < steps.size()) {
            selected = index;
            notifyListeners();
        }
    }

    /** Ticks a step off and selects the next that is open, or takes its tick back. */
    void toggle(int index) {
        Step step = steps.get(index);
        boolean finished = step.done().isEmpty();
        model.change(job -> job.withWorkDone(
                step.identifier(),
                finished ? Optional.of(clock.get().truncatedTo(ChronoUnit.SECONDS)) : Optional.empty()));
        if (finished) {
            nextOpen(index).ifPresent(this::select);
        }
    }

    /** Takes all ticks back. */
    void beginAgain() {
        model.change(Job::withoutWorkDone);
        select(0);
    }

    int doneCount() {
        return (int) steps.stream().filter(step -> step.done().isPresent()).count();
    }

    /** Returns the time of the steps that are open. */
    OperationTime timeLeft() {
        return steps.stream()
                .filter(step -> step.done().isEmpty())
                .map(step -> step.operation().time())
                .reduce(OperationTime.NONE, OperationTime::plus);
    }

    /** Returns the pieces of the selected step. */
    List<Piece> pieces() {
        if (pattern.isEmpty() || steps.isEmpty()) {
            return List.of();
        }
        List<String> names = steps.get(selected).operation().pieces();
        return pattern.get().pieces().stream()
                .filter(piece -> names.contains(piece.name()))
                .toList();
    }

    MeasureUnit unit() {
        return model.unit();
    }

    /** Returns the index of the first open step after one, or before it where there is none after. */
    private Optional<Integer> nextOpen(int index) {
        return IntStream.concat(IntStream.range(index + 1, steps.size()), IntStream.range(0, index))
                .filter(each -> steps.get(each).done().isEmpty())
                .boxed()
                .findFirst();
    }

    private void updateSteps() {
        List<Step> before = steps;
        steps = plan.map(made -> {
                    List<String> identifiers =
                            made.order().identifiers(pattern.orElseThrow().pieces());
                    return IntStream.range(0, identifiers.size())
                            .mapToObj(i -> new Step(
                                    made.order().operations().get(i),
                                    identifiers.get(i),
                                    Optional.ofNullable(model.job().workDone().get(identifiers.get(i)))))
                            .toList();
                })
                .orElse(List.of());
        if (!steps.isEmpty() && !model.openedJob().equals(openedJob)) {
            openedJob = model.openedJob();
            selected = nextOpen(-1).orElse(0); // where the work was left
        }
        selected = Math.max(0, Math.min(selected, steps.size() - 1));
        if (!steps.equals(before)) {
            notifyListeners();
        }
    }

    private void notifyListeners() {
        List.copyOf(listeners).forEach(Runnable::run);
    }
}
