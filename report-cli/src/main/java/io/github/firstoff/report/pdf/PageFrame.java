package io.github.firstoff.report.pdf;

import io.github.firstoff.report.model.Hand;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.List;

/** What stands on every page around its content: head, foot, and the bar of a handed part. */
final class PageFrame {
    /** Side margins. */
    static final double MARGIN = 18 * Type.MM;

    private static final double HEAD_TOP = 11 * Type.MM;
    private static final double BAR = 3 * Type.MM;
    /** Printers leave about 4 mm blank; the bar stands just inside, so that it is whole on paper. */
    private static final double BAR_INSET = 4.5 * Type.MM;

    private static final Type FOOT = Type.LABEL;

    private final ReportModel model;
    private final Faces faces;
    private final TextSetter texts;
    private final double width;
    private final double height;
    private final List<Field> fields = new ArrayList<>();
    private final TextSetter.SetText rule;

    PageFrame(ReportModel model, Faces faces) {
        this.model = model;
        this.faces = faces;
        texts = new TextSetter(faces, new NotationSetter(faces));
        width = model.paper().widthMm() * Type.MM;
        height = model.paper().heightMm() * Type.MM;
        field(Labels.text("frame.part"), model.head().partNumber(), true, false);
        field(Labels.text("frame.name"), model.head().partName(), false, true);
        field(Labels.text("frame.revision"), model.head().revision(), false, false);
        field(Labels.text("frame.batch"), model.head().batch(), false, false);
        field(Labels.text("frame.hand"), hand(), false, false);
        rule = texts.set(Text.of(model.foot().decisionRule()), measure() * 0.52, FOOT);
    }

    private void field(String label, String value, boolean strong, boolean mayShrink) {
        if (!value.isBlank()) {
            fields.add(new Field(label, faces.fit(value), strong, mayShrink));
        }
    }

    private record Field(String label, String value, boolean strong, boolean mayShrink) {}

    /** The hand in the language of the sheet. */
    private String hand() {
        String word = model.head().hand().word();
        return word.isEmpty() ? word : Labels.word("hand", word);
    }

    double width() {
        return width;
    }

    double height() {
        return height;
    }

    double measure() {
        return width - 2 * MARGIN;
    }

    /** Top of the type area. */
    double top() {
        return HEAD_TOP + 36;
    }

    /** Foot of the type area. */
    double bottom() {
        return height - 20 * Type.MM;
    }

    void paint(Canvas canvas, int page, int pages) {
        paintHead(canvas);
        paintFoot(canvas, page, pages);
        paintHand(canvas);
    }

    private void paintHead(Canvas canvas) {
        double right = width - MARGIN;
        double labels = HEAD_TOP + 6;
        double values = labels + 11;
        String kind = faces.fit(model.kind());
        String number = faces.fit(model.number());
        double numberWidth = number.isEmpty() ? 0 : faces.width(number, false, Type.BODY.size()) + 6;
        canvas.textRight(number, right, values, Type.BODY);
        canvas.textRight(kind, right - numberWidth, values, Type.STRONG);
        double kindWidth = faces.width(kind, true, Type.STRONG.size()) + numberWidth;
        double room = measure() - kindWidth - 14;
        double needed = 0;
        for (Field field : fields) {
            needed += fieldWidth(field);
        }
        double gap = fields.size() < 2 ? 0 : Math.max(6, Math.min(16, (room - needed) / (fields.size() - 1)));
        double excess = needed + gap * (fields.size() - 1) - room;
        double x = MARGIN;
        for (Field field : fields) {
            String value = field.value();
            double fieldWidth = fieldWidth(field);
            if (excess > 0 && field.mayShrink()) {
                // Only the name may give way: number, revision, batch and hand identify the part.
                value = shortened(value, faces.width(value, field.strong(), Type.BODY.size()) - excess);
                fieldWidth -= excess;
            }
            canvas.text(field.label(), x, labels, Type.LABEL);
            canvas.text(value, x, values, Type.BODY.heavy(field.strong()));
            x += fieldWidth + gap;
        }
        canvas.line(MARGIN, values + 5.5, right, values + 5.5, 0.8, Ink.BLACK);
    }

    private double fieldWidth(Field field) {
        return Math.max(
                faces.width(field.value(), field.strong(), Type.BODY.size()),
                faces.width(field.label(), false, Type.LABEL.size()));
    }

    private String shortened(String text, double room) {
        String ellipsis = "\u2026";
        int length = text.length();
        while (length > 1 && faces.width(text.substring(0, length) + ellipsis, false, Type.BODY.size()) > room) {
            length--;
        }
        faces.say(
                "the part name \u201C" + text + "\u201D is too long for the head of the sheet and was shortened there");
        return text.substring(0, length).stripTrailing() + ellipsis;
    }

    private void paintFoot(Canvas canvas, int page, int pages) {
        double line = height - 16.5 * Type.MM;
        double right = width - MARGIN;
        canvas.line(MARGIN, line, right, line, 0.4, Ink.BLACK);
        rule.paint(canvas, MARGIN, line + 2.5);
        String data = model.foot().dataHash().isEmpty()
                ? ""
                : "   " + Labels.text("frame.data", model.foot().dataHash());
        String program = faces.fit(model.foot().programVersion() + data);
        double baseline = line + 2.5 + FOOT.baseline();
        String pageText = Labels.text("frame.page", page, pages);
        double pageWidth = faces.width(Labels.text("frame.page", "000", "000"), true, FOOT.size());
        canvas.textRight(pageText, right, baseline, FOOT.heavy(true).in(Ink.BLACK));
        canvas.textRight(program, right - pageWidth - 6, baseline, FOOT);
    }

    private void paintHand(Canvas canvas) {
        Hand hand = model.head().hand();
        if (hand == Hand.NONE) {
            return;
        }
        String word = hand();
        boolean port = hand.isLeft();
        double x = port ? BAR_INSET : width - BAR_INSET - BAR;
        double top = 5 * Type.MM;
        double length = height - 10 * Type.MM;
        canvas.fillRectangle(x, top, BAR, length, Ink.BLACK);
        Type type = new Type(7, 9, true, Ink.WHITE);
        double wordWidth = faces.width(word, true, type.size());
        for (double share : new double[] {0.12, 0.5, 0.88}) {
            double middle = top + share * length;
            double shift = type.size() * Type.CAPITALS / 2 - 0.4;
            if (port) {
                canvas.textTurned(word, x + BAR / 2 + shift, middle + wordWidth / 2, true, type);
            } else {
                canvas.textTurned(word, x + BAR / 2 - shift, middle - wordWidth / 2, false, type);
            }
        }
    }
}
