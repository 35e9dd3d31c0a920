package io.github.firstoff.report.section;

import io.github.firstoff.report.figure.ControlFigure;
import io.github.firstoff.report.figure.HistogramFigure;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Block.Part;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.report.model.Tone;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.Sheet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A characteristic under study: one sentence, one picture, the signals in words, the indices or why there are none. */
public final class StudySection {
    private static final double TALL = 90;
    private static final double SINGLE = 62;
    private static final double HISTOGRAM = 50;

    private final Finding finding;
    private final Demands demands;

    /** The section of one finding, which has a study. */
    public StudySection(Sheet sheet, Finding finding) {
        this.finding = finding;
        this.demands = new Demands(sheet, finding);
    }

    /** The blocks, from the heading to the notes. */
    public List<Block> blocks() {
        StudyStory story = new StudyStory(finding);
        ControlChartSection chart = new ControlChartSection(finding, story.signals());
        List<Block> blocks = new ArrayList<>();
        blocks.add(Block.Heading.of(title()));
        blocks.add(new Block.Headline(Text.of(story.headline()), tone(story)));
        blocks.add(new Block.Paragraph(requirement().plain(story.paragraph())));
        Optional<ControlFigure> figure = chart.figure();
        figure.ifPresent(each -> blocks.add(
                new Block.FigureBlock(each, each.dispersion().isPresent() ? TALL : SINGLE, story.alternative())));
        if (!story.signals().isEmpty()) {
            blocks.add(new Block.MarkedList(story.signals().items()));
        }
        List<Block> notes = story.notes().stream()
                .<Block>map(note -> new Block.Note(Text.of(note)))
                .toList();
        if (figure.isPresent() && chart.holdsHistogram()) {
            blocks.addAll(new CapabilitySection(finding, demands.mark()).blocks());
            blocks.add(new Block.Note(
                    Text.of("Histogram at the right of the chart. " + new HistogramSection(finding).note())));
            blocks.addAll(notes);
        } else {
            below(blocks, notes);
        }
        return blocks;
    }

    /** The histogram, and beside it the indices and the notes; these alone where there are too few readings for a picture. */
    private void below(List<Block> blocks, List<Block> notes) {
        List<Block> words = new ArrayList<>(new CapabilitySection(finding, demands.mark()).blocks());
        words.addAll(notes);
        HistogramSection histogram = new HistogramSection(finding);
        Optional<HistogramFigure> figure = histogram.figure();
        if (figure.isEmpty()) {
            blocks.addAll(words);
            return;
        }
        String alternative = "Histogram of " + figure.get().name() + ", required "
                + Figures.limitsInWords(finding.result().characteristic().limits()) + ".";
        List<Block> picture = new ArrayList<>();
        picture.add(new Block.FigureBlock(figure.get(), HISTOGRAM, alternative));
        if (!histogram.note().isEmpty()) {
            picture.add(new Block.Note(Text.of(histogram.note())));
        }
        blocks.add(new Block.SideBySide(List.of(new Part(5, picture), new Part(7, words))));
    }

    private String title() {
        return finding.number() + "  " + Wording.feature(finding.result().characteristic()) + ": "
                + finding.study().orElseThrow().chartTitle().toLowerCase(java.util.Locale.ROOT);
    }

    private Text requirement() {
        return Text.of("Required: ")
                .notation(Notations.of(finding.result().characteristic().characteristic()))
                .plain(" ("
                        + Figures.limitsInWords(
                                finding.result().characteristic().limits()) + "). ");
    }

    private static Tone tone(StudyStory story) {
        return story.isShownInControl() ? Tone.GOOD : Tone.OPEN;
    }
}
