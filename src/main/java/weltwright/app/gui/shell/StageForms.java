package weltwright.app.gui.shell;

import java.awt.CardLayout;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import javax.swing.BorderFactory;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.model.WorkflowStage;
import weltwright.units.MeasureUnit;

/** The forms of the stages, one of which is visible, and what is refused in them. */
final class StageForms extends JPanel {
    private final transient Map<WorkflowStage, FormPanel> forms = new EnumMap<>(WorkflowStage.class);
    private final transient Runnable refusalListener;

    /** @param refusalListener called whenever an entry was refused, and when that is over */
    StageForms(Runnable refusalListener) {
        super(new CardLayout());
        this.refusalListener = refusalListener;
    }

    void add(WorkflowStage stage, FormPanel form) {
        forms.put(stage, form);
        form.onRefusal(refusalListener);
        JScrollPane scroll = new JScrollPane(form);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
        add(scroll, stage.name());
    }

    void show(WorkflowStage stage) {
        ((CardLayout) getLayout()).show(this, stage.name());
    }

    void setUnit(MeasureUnit unit) {
        forms.values().forEach(form -> form.setUnit(unit));
    }

    /** Discards what was typed and not committed, such as when another job is opened. */
    void discardUncommitted() {
        forms.values().forEach(FormPanel::discardUncommitted);
    }

    /** Returns the stage of the first refused entry on which a stage depends; empty where there is none. */
    Optional<WorkflowStage> refusal(WorkflowStage dependent) {
        return causes(dependent).stream()
                .filter(stage -> form(stage).refusedField().isPresent())
                .findFirst();
    }

    /** Returns why that entry was refused, for the user; empty where there is none. */
    String refusalText(WorkflowStage dependent) {
        return refusal(dependent)
                .flatMap(stage -> form(stage).refusedField())
                .map(field -> field.errorText().getText())
                .orElse("");
    }

    /** Moves the focus to the refused entry of the visible form. */
    void focusRefusedEntry(WorkflowStage stage) {
        form(stage).showRefusedField();
    }

    /**
     * Returns the stages on whose entries a stage depends: the outline on the knife's, the pattern on two, the layout
     * on three, paper and bench on all but those of the layout.
     */
    private static Set<WorkflowStage> causes(WorkflowStage dependent) {
        return switch (dependent) {
            case KNIFE -> EnumSet.of(WorkflowStage.KNIFE);
            case SHEATH -> EnumSet.of(WorkflowStage.KNIFE, WorkflowStage.SHEATH);
            case LEATHER -> EnumSet.of(WorkflowStage.KNIFE, WorkflowStage.SHEATH, WorkflowStage.LEATHER);
            case PAPER, BENCH -> EnumSet.complementOf(EnumSet.of(WorkflowStage.LEATHER));
        };
    }

    private FormPanel form(WorkflowStage stage) {
        return Objects.requireNonNull(forms.get(stage));
    }
}
