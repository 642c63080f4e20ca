package weltwright.app.gui.shell;

import java.awt.KeyboardFocusManager;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.time.LocalDate;
import java.util.Optional;
import javax.swing.JLabel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.text.AbstractDocument;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.TextChangeListener;
import weltwright.app.gui.form.TextLimitFilter;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.form.ValidatedFields;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.widget.WrappedText;
import weltwright.job.Job;
import weltwright.job.JobFields;

/** Whose knife it is, when it is to be ready, and whatever else was agreed. */
final class OrderForm extends FormPanel {
    private final JobModel bench;
    private final ValidatedField<String> customer = ValidatedFields.words(JobFields.CUSTOMER, "");
    private final ValidatedField<String> knife = ValidatedFields.words(JobFields.KNIFE_NAME, "");
    private final ValidatedField<Optional<LocalDate>> due =
            ValidatedFields.dayIfAny("day to be ready", Optional.empty());
    private final JLabel begun = new JLabel();
    private final JTextArea notes = new JTextArea(9, 10);
    private Object session = new Object();
    private boolean showing;

    OrderForm(JobModel bench) {
        this.bench = bench;
        heading("The order");
        line("Customer", 'C', customer, "Whose sheath it is to be");
        line("Knife", 'K', knife, "What you call the knife; it is printed on the pattern");
        line("Begun", (char) 0, begun, "The day this job was begun");
        line("Ready by", 'R', due, "For example 24 Mar 2027; may be left empty");
        heading("Notes");
        notes.setLineWrap(true);
        notes.setWrapStyleWord(true);
        notes.setName("notes");
        notes.getAccessibleContext().setAccessibleName("Notes");
        notes.setToolTipText("Colour, thread, stamp, price: whatever was agreed");
        notes.setFocusTraversalKeys(KeyboardFocusManager.FORWARD_TRAVERSAL_KEYS, null);
        notes.setFocusTraversalKeys(KeyboardFocusManager.BACKWARD_TRAVERSAL_KEYS, null);
        add(new JScrollPane(notes), "span, growx, wmin 0");
        WrappedText leftOut = words("");
        ((AbstractDocument) notes.getDocument()).setDocumentFilter(new TextLimitFilter(JobFields.NOTES, leftOut::say));
        customer.onTaken(() -> take(customer.session()));
        knife.onTaken(() -> take(knife.session()));
        due.onTaken(() -> take(due.session()));
        // Each letter is in the job at once: nothing typed can be lost.
        notes.getDocument().addDocumentListener((TextChangeListener) () -> {
            if (!showing) {
                take(session);
            }
        });
        notes.addFocusListener(new FocusAdapter() {
            @Override
            public void focusGained(FocusEvent e) {
                session = new Object();
            }
        });
        bench.watch(this::follow);
    }

    private void take(Object session) {
        bench.change(session, job -> job.withOrder(customer.value(), knife.value(), due.value(), notes.getText()));
    }

    private void follow() {
        Job job = bench.job();
        customer.show(job.customer());
        knife.show(job.knifeName());
        due.show(job.due());
        begun.setText(ValidatedFields.day(job.begun()));
        if (!notes.getText().equals(job.notes())) {
            showing = true;
            notes.setText(job.notes());
            notes.setCaretPosition(0);
            showing = false;
        }
    }
}
