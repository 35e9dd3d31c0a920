package io.github.firstoff.report.kind;

import io.github.firstoff.inspection.House;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Logo;
import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * On what a sheet is printed: which paper, in whose name, in what language. It adds the head of the firm's paper and its own sentence at the
 * lines to sign; it changes nothing that the sheet says.
 *
 * @param paper the paper
 * @param labels the language of labels and sentences
 * @param house whose paper it is; empty for plain paper
 */
public record Stationery(PaperSize paper, Labels labels, Optional<House> house) {
    /** Plain A4, in English. */
    public static final Stationery PLAIN = new Stationery(PaperSize.A4, Labels.ENGLISH, Optional.empty());

    /** The paper of that name. */
    public static PaperSize size(House.Paper paper) {
        return switch (paper) {
            case A4 -> PaperSize.A4;
            case LETTER -> PaperSize.US_LETTER;
        };
    }

    /**
     * The sheet on this stationery.
     *
     * @param composed composes the sheet; it is called once, in the language of this stationery
     */
    public ReportModel on(Supplier<ReportModel> composed) {
        ReportModel model = labels.speaking(composed::get);
        if (house.isEmpty()) {
            return model;
        }
        List<Block> blocks = new ArrayList<>();
        blocks.add(letterhead(house.get()));
        for (Block block : model.blocks()) {
            blocks.add(house.get()
                    .signOff()
                    .filter(text -> block instanceof Block.SignOff)
                    .map(text -> signedBy((Block.SignOff) block, text))
                    .orElse(block));
        }
        return model.with(blocks);
    }

    private static Block letterhead(House house) {
        return new Block.Letterhead(
                house.firm().name(),
                house.firm().address().orElse(""),
                house.approvals().orElse(""),
                house.logo().map(logo -> new Logo(logo.isVector(), logo.bytes())));
    }

    private static Block signedBy(Block.SignOff lines, String sentence) {
        Text statement = lines.statement().isEmpty()
                ? Text.of(sentence)
                : lines.statement().plain("\n" + sentence);
        return new Block.SignOff(statement, lines.lines());
    }
}
