// What the yoke says, as fields: for the size that is shown, where a number differs from size to size.
#include "editor/choice_field.hpp"
#include "editor/yoke_cache.hpp"
#include "editor/yoke_parts.hpp"
#include "pieces/shaping_kinds.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <functional>
#include <ranges>

namespace punchwright::editor {

namespace {

constexpr double cm2_of_inch_swatch = 4 * 4 * mm_per_inch * mm_per_inch / 100; // the swatch of a gauge over 4 inches

// Fields of the open yoke.
class Fields {
public:
  Fields(const App& app, Actions& actions)
      : app_(app), actions_(actions), opened_(*app.yoke.opened), yoke_(opened_.yoke), size_(app.view.yoke.size) {}

  void run() {
    title();
    machine();
    pieces();
    depth();
    tiers();
    gauge(); // below what is changed most often
    fit();
    decreases();
    yarns();
  }

private:
  void title() {
    heading(app_.theme, tr("The yoke"));
    label(app_.theme, tr("Title"), 0.30F);
    std::string text = yoke_.title;
    if (text_input({app_, actions_, "yoke title"}, text)) {
      Yoke next = yoke_;
      next.title = text;
      send(app_, actions_, std::move(next), noted("title"));
    }
  }

  void machine() {
    Yoke next = yoke_;
    if (yoke_machine_field({app_, actions_, "yoke machine"}, next.profile)) {
      send(app_, actions_, std::move(next), noted("machine for all tiers"));
    }
    make_wanted(app_, actions_, WantedField::yoke_machine);
    if (button(app_.theme, actions_, "yoke machine file", tr("Use a .machine file…"))) {
      PathDialog dialog;
      dialog.purpose = Purpose::choose_machine;
      dialog.folder = app_.session.folder;
      dialog.entries = entries_of(dialog.folder, dialog.purpose);
      actions_.push(SetDialog{dialog});
    }
    tip(app_.theme, tr("A machine of your own, kept in a file"));
  }

  // Of the yoke itself, in place of the tiers' own; and of its plain rows.
  void gauge() {
    const LengthUnit unit = app_.settings.lengths;
    const auto field = [&](const char* name, const char* words, std::optional<double> YokeGauge::*member,
                           const std::string& otherwise, const char* step) {
      const std::optional<double> kept = yoke_.gauge.*member;
      std::optional<double> shown = kept ? std::optional(gauge_shown(*kept, unit)) : std::nullopt;
      if (optional_field({app_, actions_, name}, words, shown, gauge_shown(1, unit), gauge_shown(200, unit), 1,
                         otherwise)) {
        Yoke next = yoke_;
        next.gauge.*member = shown ? std::optional(std::clamp(gauge_kept(*shown, unit), 1.0, 200.0)) : std::nullopt;
        send(app_, actions_, std::move(next), step);
      }
    };
    const auto own = [](const OpenedTier& tier) { return tier.own_gauge; };
    const auto present = [](const OpenedTier& tier) { return tier.document.gauge; };
    heading(app_.theme, said("Gauge, over {}", gauge_span_text(unit)).c_str());
    field("yoke gauge stitches", tr("Stitches"), &YokeGauge::stitches, of_tiers(own, &Gauge::stitches),
          noted("gauge stitches"));
    field("yoke gauge rows", tr("Rows"), &YokeGauge::rows, of_tiers(own, &Gauge::rows), noted("gauge rows"));
    field("yoke plain stitches", tr("Plain: stitches"), &YokeGauge::plain_stitches, of_tiers(present, &Gauge::stitches),
          noted("gauge stitches of plain rows"));
    field("yoke plain rows", tr("Plain: rows"), &YokeGauge::plain_rows, of_tiers(present, &Gauge::rows),
          noted("gauge rows of plain rows"));
    hint(app_.theme, tr("Empty: as the tiers' files have it; plain rows as the pattern."));
  }

  // "14", or where tiers differ "14–16".
  template <class GaugeOf> [[nodiscard]] std::string of_tiers(GaugeOf gauge_of, double Gauge::*member) const {
    const auto shown = [&](const OpenedTier& tier) {
      return gauge_shown(gauge_of(tier).*member, app_.settings.lengths);
    };
    const auto [least, most] = std::ranges::minmax(opened_.tiers | std::views::transform(shown));
    const std::string from = short_decimal(least, 2);
    const std::string to = short_decimal(most, 2);
    return from == to ? from : from + "–" + to;
  }

  // One measure of a size.
  void measure(const std::string& name, const char* words, const PerSize<double>& all, double low, double high,
               const std::string& step, const std::function<PerSize<double>&(Yoke&)>& there) {
    double cm = all.at(size_);
    if (cloth_field({app_, actions_, name.c_str()}, words, cm, low, high)) {
      Yoke next = yoke_;
      set_for_size(there(next), yoke_.sizes.size(), size_, cm);
      send(app_, actions_, std::move(next), fmt::format("{}, {}", step, yoke_.sizes[size_]));
    }
  }

  void pieces() {
    for (std::size_t index = 0; index < yoke_.pieces.size(); ++index) {
      const YokePiece& piece = yoke_.pieces[index];
      ImGui::PushID(static_cast<int>(index));
      heading(app_.theme, piece.name.c_str());
      if (!piece.like.empty()) {
        hint(app_.theme, said("As wide as {}.", piece.like));
      } else {
        measure(fmt::format("yoke bottom {}", index + 1), tr("Bottom"), piece.bottom_cm, narrowest_cm, widest_cm,
                said("{} at the bottom", piece.name),
                [index](Yoke& yoke) -> PerSize<double>& { return yoke.pieces[index].bottom_cm; });
        measure(fmt::format("yoke top {}", index + 1), tr("Top"), piece.top_cm, narrowest_cm, widest_cm,
                said("{} at the top", piece.name),
                [index](Yoke& yoke) -> PerSize<double>& { return yoke.pieces[index].top_cm; });
      }
      ImGui::PopID();
    }
  }

  void depth() {
    heading(app_.theme, tr("Depth"));
    measure("yoke depth", tr("Depth"), yoke_.depth_cm, shallowest_cm, deepest_cm, tr("depth"),
            [](Yoke& yoke) -> PerSize<double>& { return yoke.depth_cm; });
  }

  void tiers() {
    heading(app_.theme, tr("Tiers, from the bottom"));
    for (std::size_t tier = 0; tier < yoke_.tiers.size(); ++tier) {
      ImGui::PushID(static_cast<int>(tier));
      const std::string words =
          fmt::format("{}. {}", tier + 1, tier < app_.caches.yoke.tiers.size() ? app_.caches.yoke.tiers[tier] : "");
      const std::string name = fmt::format("yoke tier {}", tier + 1);
      const float room = ImGui::GetContentRegionAvail().x;
      const std::string shown = shortened(words, room - 2 * ImGui::GetStyle().FramePadding.x);
      if (button(app_.theme, actions_, name.c_str(), shown.c_str())) {
        actions_.push(OpenTier{tier});
      }
      tip(app_.theme, said("Open its repeat: {}", yoke_.tiers[tier].repeat));
      plain_rows(tier);
      ImGui::PopID();
    }
    if (button(app_.theme, actions_, "yoke add tier", tr("Add a tier…"))) {
      actions_.push(AddTierTo{});
    }
    tip(app_.theme, tr("Another repeat, above the others"));
    if (yoke_.tiers.size() > 1) {
      flow(ImGui::CalcTextSize(tr("Remove the top tier")).x + 2 * ImGui::GetStyle().FramePadding.x);
      if (button(app_.theme, actions_, "yoke remove tier", tr("Remove the top tier"))) {
        Yoke next = yoke_;
        next.tiers.pop_back();
        send(app_, actions_, std::move(next), noted("remove the top tier"));
      }
    }
  }

  void plain_rows(std::size_t tier) {
    const int needed = plain_rows_needed(opened_, tier).needed();
    int rows = yoke_.tiers[tier].plain_above.at(size_);
    const std::string name = fmt::format("yoke rows {}", tier + 1);
    if (count_field({app_, actions_, name.c_str()}, tr("Plain rows above"), rows, needed, most_plain_rows)) {
      Yoke next = yoke_;
      set_for_size(next.tiers[tier].plain_above, yoke_.sizes.size(), size_, rows);
      send(app_, actions_, std::move(next), said("plain rows above tier {}, {}", tier + 1, yoke_.sizes[size_]));
    }
  }

  void fit() {
    heading(app_.theme, tr("Stitch counts and seams"));
    Yoke next = yoke_;
    double percent = next.fit.tolerance * 100;
    if (number_field({app_, actions_, "yoke tolerance"}, tr("Tolerance, %"), percent, 0, 50, 1)) {
      next.fit.tolerance = percent / 100;
      send(app_, actions_, next, noted("tolerance"));
    }
    tip(app_.theme, tr("How far stitch counts may leave the straight line between bottom and top"));
    if (choose<YokeSeams, 3>({app_, actions_, "yoke seams"}, tr("Seams"), next.fit.seams,
                             {{{tr("continuous"), static_cast<int>(YokeSeams::continuous)},
                               {tr("centred"), static_cast<int>(YokeSeams::centred)},
                               {tr("free"), static_cast<int>(YokeSeams::free)}}})) {
      send(app_, actions_, next, noted("seams"));
    }
    tip(app_.theme, tr("Continuous: the motif goes on across every seam. Centred: its middle at the middle of each "
                       "piece, and seams "
                       "alike"));
    if (count_field({app_, actions_, "yoke edge"}, tr("Seam stitches"), next.edge, 0, 50)) {
      send(app_, actions_, next, noted("seam stitches"));
    }
    tip(app_.theme, tr("On each side of each piece; they vanish in the seam"));
  }

  void decreases() {
    ShapingKinds kinds;
    if (const SizePlan* const plan = shown_plan(app_)) {
      for (const PieceOfSize& piece : plan->pieces) {
        std::ranges::for_each(piece.tiers, [&](const TierOfPiece& tier) { kinds.add(tier.shaping); });
      }
    }
    heading(app_.theme, kinds.of(tr("Decreases"), tr("Increases"), tr("Decreases and increases")));
    Yoke next = yoke_;
    if (choose<DecreaseWay, 3>({app_, actions_, "yoke way"}, tr("Spacing"), next.decreases.way,
                               {{{tr("gathered"), static_cast<int>(DecreaseWay::gathered)},
                                 {tr("spread"), static_cast<int>(DecreaseWay::spread)},
                                 {tr("half steps"), static_cast<int>(DecreaseWay::half_steps)}}})) {
      send(app_, actions_, next, noted("spacing of decreases"));
    }
    tip(app_.theme, tr("Gathered: the long steps at both ends. Spread: mixed. Half steps: going on across the seams"));
    if (choose<DecreaseTowards, 2>({app_, actions_, "yoke towards"}, tr("Towards"), next.decreases.towards,
                                   {{{tr("the centre"), static_cast<int>(DecreaseTowards::centre)},
                                     {tr("the edges"), static_cast<int>(DecreaseTowards::edges)}}})) {
      send(app_, actions_, next, noted("side of decreases"));
    }
    if (count_field({app_, actions_, "yoke clear"}, tr("Clear of seams"), next.decreases.clear_of_seam, 0, 50)) {
      send(app_, actions_, next, noted("decreases clear of seams"));
    }
    tip(app_.theme,
        tr("Stitches beside the seam stitches that decreases and increases leave alone where there is room"));
    if (check_box(actions_, "yoke centre", tr("Off the motif's centre line"), next.decreases.clear_of_centre)) {
      send(app_, actions_, next, noted("decreases off the centre line"));
    }
  }

  void yarns() {
    heading(app_.theme, tr("Yarns, for the amounts"));
    for (const char key : keys()) {
      ImGui::PushID(key);
      const auto known = std::ranges::find(yoke_.yarns, key, &YokeYarn::key);
      YokeYarn yarn = known == yoke_.yarns.end() ? YokeYarn{key, {}, {}, {}, {}} : *known;
      if (facts_of(yarn)) {
        Yoke next = yoke_;
        if (known == yoke_.yarns.end()) {
          next.yarns.push_back(yarn);
        } else {
          next.yarns[static_cast<std::size_t>(known - yoke_.yarns.begin())] = yarn;
        }
        send(app_, actions_, std::move(next), said("yarn {}", key));
      }
      ImGui::PopID();
    }
    hint(app_.theme,
         said("Swatches of {}. The loop: the length of a ravelled row by its stitches. Swatches go before it; "
              "without either, what the gauge suggests.",
              app_.settings.lengths == LengthUnit::inches ? "4 × 4 in" : "10 × 10 cm"));
  }

  bool facts_of(YokeYarn& yarn) {
    const char key = yarn.key;
    const bool inches = app_.settings.lengths == LengthUnit::inches;
    bool changed = false;
    const auto number = [&](const char* name, const std::string& words, std::optional<double>& value, Span span) {
      changed = optional_number(fmt::format("yoke {} {}", name, key), words, value, span) || changed;
    };
    number("metres", inches ? said("{}: yards in 100 g", key) : said("{}: metres in 100 g", key), yarn.metres_per_100g,
           {1, 10000, inches ? metres_per_yard : 1, 1});
    number("loop", inches ? said("{}: loop, in", key) : said("{}: loop, mm", key), yarn.loop_mm,
           {1, 200, inches ? mm_per_inch : 1, inches ? 3 : 1});
    const Span weight{0.01, 100, inches ? 100 / cm2_of_inch_swatch : 1, 1};
    number("plain", said("{}: plain swatch, g", key), yarn.plain_g_per_100cm2, weight);
    tip(app_.theme, tr("A weighed swatch in this yarn alone"));
    number("coloured", said("{}: two-colour swatch, g", key), yarn.two_colour_g_per_100cm2, weight);
    tip(app_.theme, tr("What of this yarn is in a two-colour swatch: its cone weighed before and after"));
    return changed;
  }

  // Of the yarns that are used, each once; where no counts fit, those that the yoke says something of.
  [[nodiscard]] std::vector<char> keys() const {
    std::vector<char> keys;
    const auto add = [&keys](char key) {
      if (std::ranges::find(keys, key) == keys.end()) {
        keys.push_back(key);
      }
    };
    if (const SizePlan* const plan = shown_plan(app_)) {
      std::ranges::for_each(plan->yarns, [&add](const YarnAmount& amount) { add(amount.yarn.key); });
    } else {
      std::ranges::for_each(yoke_.yarns, [&add](const YokeYarn& yarn) { add(yarn.key); });
    }
    return keys;
  }

  // What may stand in a field, and in which unit it is shown.
  struct Span {
    double low = 0;
    double high = 0;
    double unit = 1; // in what is kept
    int decimals = 1;
  };

  // Shown in its unit, kept to a thousandth.
  bool optional_number(const std::string& name, const std::string& words, std::optional<double>& value, Span span) {
    const auto shown_as = [&span](double kept) { return std::round(kept / span.unit * 1000) / 1000; };
    std::optional<double> shown = value ? std::optional(shown_as(*value)) : std::nullopt;
    if (!optional_field({app_, actions_, name.c_str()}, words.c_str(), shown, shown_as(span.low), shown_as(span.high),
                        span.decimals, tr("not known"))) {
      return false;
    }
    const auto kept_as = [&span](double typed) {
      return std::clamp(std::round(typed * span.unit * 1000) / 1000, span.low, span.high);
    };
    const std::optional<double> next = shown ? std::optional(kept_as(*shown)) : std::nullopt;
    return std::exchange(value, next) != next;
  }

  const App& app_;
  Actions& actions_;
  const OpenedYoke& opened_;
  const Yoke& yoke_;
  std::size_t size_;
};

} // namespace

void yoke_fields(const App& app, Actions& actions) {
  Fields(app, actions).run();
}

} // namespace punchwright::editor
