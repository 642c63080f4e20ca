package weltwright.app.gui.order;

import java.awt.KeyboardFocusManager;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.time.LocalDate;
import java.util.Optional;
import javax.swing.JLabel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.text.AbstractDocument;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.TextChangeListener;
import weltwright.app.gui.form.TextLimitFilter;
import weltwright.app.gui.form.TypingUndo;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.widget.WrappedText;
import weltwright.job.Job;
import weltwright.job.JobFields;

/** The form of the order stage: customer, knife, date and notes. */
public final class OrderForm extends FormPanel {
    private final JobModel model;
    private final ValidatedField<String> customer = FieldFactory.text(JobFields.CUSTOMER, "");
    private final ValidatedField<String> knife = FieldFactory.text(JobFields.KNIFE_NAME, "");
    private final ValidatedField<Optional<LocalDate>> due =
            FieldFactory.optionalDate("day to be ready", Optional.empty());
    private final JLabel begun = new JLabel();
    private final JTextArea notes = new JTextArea(9, 10);
    private final transient TypingUndo typingUndo = new TypingUndo(notes);
    private Object editSession = new Object();
    private boolean updating;

    public OrderForm(JobModel model) {
        this.model = model;
        addHeading("The order");
        addRow("Customer", 'C', customer, "Whose sheath it is to be");
        addRow("Knife", 'K', knife, "What you call the knife; it is printed on the pattern");
        addRow("Begun", (char) 0, begun, "The day this job was begun");
        addRow("Ready by", 'R', due, "For example 24 Mar 2027; may be left empty");
        addHeading("Notes");
        notes.setLineWrap(true);
        notes.setWrapStyleWord(true);
        notes.setName("notes");
        notes.getAccessibleContext().setAccessibleName("Notes");
        notes.setToolTipText("Colour, thread, stamp, price: whatever was agreed");
        notes.setFocusTraversalKeys(KeyboardFocusManager.FORWARD_TRAVERSAL_KEYS, null);
        notes.setFocusTraversalKeys(KeyboardFocusManager.BACKWARD_TRAVERSAL_KEYS, null);
        add(new JScrollPane(notes), "span, growx, wmin 0");
        WrappedText omissionText = addText("");
        ((AbstractDocument) notes.getDocument())
                .setDocumentFilter(new TextLimitFilter(JobFields.NOTES, omissionText::showText));
        customer.onCommit(() -> commit(customer.editSession()));
        knife.onCommit(() -> commit(knife.editSession()));
        due.onCommit(() -> commit(due.editSession()));
        // Notes are stored with each key, so that nothing typed is lost.
        notes.getDocument().addDocumentListener((TextChangeListener) () -> {
            if (!updating) {
                commit(editSession);
            }
        });
        notes.addFocusListener(new FocusAdapter() {
            @Override
            public void focusGained(FocusEvent e) {
                editSession = new Object();
            }

            @Override
            public void focusLost(FocusEvent e) {
                typingUndo.forget();
            }
        });
        model.subscribe(this::update);
    }

    private void commit(Object editSession) {
        model.change(editSession, job -> job.withOrder(customer.value(), knife.value(), due.value(), notes.getText()));
    }

    private void update() {
        Job job = model.job();
        customer.setValue(job.customer());
        knife.setValue(job.knifeName());
        due.setValue(job.due());
        begun.setText(FieldFactory.formatDate(job.begun()));
        if (!notes.getText().equals(job.notes())) {
            updating = true;
            typingUndo.unrecorded(() -> notes.setText(job.notes()));
            notes.setCaretPosition(0);
            updating = false;
        }
    }
}
