package weltwright.app.gui.bench;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.swing.JButton;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.app.gui.widget.RunnableAction;
import weltwright.app.gui.widget.WrappedText;
import weltwright.assembly.AssemblyPlan;
import weltwright.assembly.Operation;
import weltwright.message.Messages;

/** The form of the bench: how far the work is, and what is to be known of the selected step. */
public final class BenchForm extends FormPanel {
    private final transient Messages messages = Messages.of(BenchForm.class);
    private final transient BenchModel bench;
    private final WrappedText progress = new WrappedText(ThemeColors::text);
    private final WrappedText explanation = new WrappedText(ThemeColors::text);
    private final WrappedText checks;
    private final JButton tick;
    private final JButton again;

    BenchForm(BenchModel bench, BenchPanel panel, FileDialogs dialogs) {
        this.bench = bench;
        addHeading(text("form.heading"));
        progress.setName("work done");
        addFullWidth(progress);
        tick = addButton("tick step", "form.tick", () -> bench.toggle(bench.selected()));
        addButton("full screen", "form.full", panel::toggleFullScreen);
        again = addButton("begin again", "form.again", () -> {
            if (dialogs.askChoice(
                            text("form.again.title"),
                            text("form.again.question"),
                            text("form.again.yes"),
                            text("form.again.no"))
                    .equals(Optional.of(0))) {
                bench.beginAgain();
            }
        });
        addHeading(text("form.step"));
        explanation.setName("why in this order");
        addFullWidth(explanation);
        addText(text("form.hint"));
        addHeading(text("form.checks"));
        checks = addText("");
        bench.addListener(this::update);
        update();
    }

    private JButton addButton(String name, String key, Runnable action) {
        JButton button = new JButton(new RunnableAction(text(key), text(key + ".tip"), action));
        button.setName(name);
        addFullWidth(button);
        return button;
    }

    private void update() {
        List<BenchModel.Step> steps = bench.steps();
        int done = bench.doneCount();
        tick.setEnabled(!steps.isEmpty());
        again.setEnabled(done > 0);
        progress.showText(
                steps.isEmpty()
                        ? text("form.none")
                        : text("form.progress", done, steps.size()) + " "
                                + (done == steps.size()
                                        ? text("form.allDone")
                                        : text("form.left", bench.timeLeft().inAll())));
        explanation.showText(steps.isEmpty() ? "" : explain(bench.plan().orElseThrow(), bench.selected()));
        checks.showText(
                bench.plan().map(plan -> String.join(" ", plan.finalChecks())).orElse(""));
    }

    private String explain(AssemblyPlan plan, int index) {
        List<Operation> operations = plan.order().operations();
        Operation operation = operations.get(index);
        String before = plan.order().constraints().stream()
                .filter(constraint -> constraint.after().equals(operation))
                .map(constraint ->
                        text("form.waits.step", operations.indexOf(constraint.before()) + 1, constraint.why()))
                .distinct()
                .collect(Collectors.joining("; "));
        return Stream.of(
                        operation.work() + ".",
                        operation.note(),
                        text("form.phase", index + 1, operation.phase().words()),
                        before.isEmpty() ? text("form.waitsForNothing") : text("form.waits", before))
                .filter(sentence -> !sentence.isEmpty())
                .collect(Collectors.joining(" "));
    }

    private String text(String key, Object... values) {
        return messages.text(key, values);
    }
}
