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
import weltwright.message.Messages;

/** The form of the order stage: customer, knife, date and notes. */
public final class OrderForm extends FormPanel {
    private static final Messages TEXTS = Messages.of(OrderForm.class);

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
        addHeading(TEXTS.text("order-form.the-order"));
        addRow(TEXTS.text("order-form.customer"), customer, TEXTS.text("order-form.whose-sheath-it-is-to"));
        addRow(TEXTS.text("order-form.knife"), knife, TEXTS.text("order-form.what-you-call-the-knife"));
        addRow(TEXTS.text("order-form.begun"), begun, TEXTS.text("order-form.the-day-this-job-was"));
        addRow(TEXTS.text("order-form.ready-by"), due, TEXTS.text("order-form.for-example-24-mar-2027"));
        addHeading(TEXTS.text("order-form.notes"));
        notes.setLineWrap(true);
        notes.setWrapStyleWord(true);
        notes.setName("notes");
        notes.getAccessibleContext().setAccessibleName(TEXTS.text("order-form.notes"));
        notes.setToolTipText(TEXTS.text("order-form.colour-thread-stamp-price-whatever"));
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
