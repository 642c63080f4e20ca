package weltwright.window;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.JComboBox;
import javax.swing.event.PopupMenuEvent;
import javax.swing.event.PopupMenuListener;
import weltwright.ground.PhoneLens;
import weltwright.job.Job;
import weltwright.job.PhoneShelf;

/** The line for the phone that took the photo: one whose lens was measured, or none. */
final class PhoneRow {
    private static final Choice<Optional<PhoneLens>> NONE = new Choice<>(Optional.empty(), "Not measured");

    private final JComboBox<Choice<Optional<PhoneLens>>> box = new JComboBox<>();
    private List<PhoneLens> kept = List.of();
    private boolean showing;

    PhoneRow(Bench bench, PhoneShelf phones) {

        box.setName("phone");
        box.addItem(NONE);
        box.addActionListener(e -> {
            if (!showing) {
                Optional<PhoneLens> chosen = Choice.chosen(box);
                bench.change(job -> job.withSettings(job.settings().withPhone(chosen)));
            }
        });
        box.addPopupMenuListener(new PopupMenuListener() {
            @Override
            public void popupMenuWillBecomeVisible(PopupMenuEvent e) {
                kept = phones.all();
                fill(bench.job());
            }

            @Override
            public void popupMenuWillBecomeInvisible(PopupMenuEvent e) {
                // the choice itself tells
            }

            @Override
            public void popupMenuCanceled(PopupMenuEvent e) {
                // nothing was chosen
            }
        });
    }

    void addTo(Form form) {
        form.line("Phone", (char) 0, box, "A phone whose lens was measured (File, Measure a phone's lens)");
    }

    void follow(Job job) {
        if (!Choice.chosen(box).equals(job.settings().phone())) {
            fill(job);
        }
    }

    /** All that were kept when last looked, and the one of the job, which may have come from another computer. */
    private void fill(Job job) {
        Optional<PhoneLens> now = job.settings().phone();
        List<PhoneLens> all = new ArrayList<>(kept);
        now.filter(lens -> !all.contains(lens)).ifPresent(all::add);
        showing = true;
        box.removeAllItems();
        box.addItem(NONE);
        all.forEach(lens -> box.addItem(new Choice<>(Optional.of(lens), lens.name())));
        Choice.choose(box, now);
        showing = false;
    }
}
