#include "symptom_table.hpp"

namespace blockwright {
namespace {

// What is seen, and its cure: the catalogue's rows and their sources (correction_table.hpp); the
// sayings are everyday speech, from memory.
// clang-format off
constexpr SymptomEntry kNeck[] = {
    {"lower", "front_neck", "The front neck comes down at the centre, to nothing at the side neck points.",
     "front neck cuts; front neck high; front neck tight; front neck fold tight; neck cuts; neck high; front neck rides"},
    {"raise", "front_neck", "The front neck goes up at the centre, to nothing at the side neck points.",
     "front neck low; neck low; front neck low wide; front neck long; front neck below; neck chest low; neck chest"},
    {"widen", "neck", "Both necklines go into the pieces all round; the shoulders become shorter.",
     "neck tight all round; neck tight; neck narrow; neck small all round; whole rides neck tight; neck high all round"},
    {"narrow", "neck", "Both necklines come in round the neck; the shoulders become longer.",
     "neck gapes all round; neck loose all round; neck wide; neck loose; neck gapes; neck low all round"},
    {"widen", "side_neck", "Each side neck point goes out along its shoulder by the amount; the centres stay.",
     "neck side cuts; neck side tight; neck side high; neck side narrow; neck side rides"},
    {"narrow", "side_neck", "Each side neck point comes in along its shoulder by the amount; the centres stay.",
     "neck side gapes; neck side loose; neck side wide; neck side low; neck side far out"},
    {"take_in", "front_neck_edge", "The gaping front neck edge is closed; its cloth goes into the front darts.",
     "front neck gapes; front neck loose; front neck bubbles; front neck fold bust; front neck fold loose; front neck flap"},
    {"take_in", "back_neck_edge", "The gap at the nape is closed; its cloth goes into the back shoulder dart.",
     "back neck gapes; back neck loose; back neck wide; back neck bubbles; back neck gapes round blades"},
    {"lower", "back_neck", "The back neck comes down at the centre; the side neck points stay.",
     "back neck high; back neck fold below; back neck cuts; back neck fold; back neck fold across; back neck tight"},
    {"raise", "back_neck", "The back neck goes up at the centre; the side neck points stay.",
     "back neck low; back neck below; back neck short"},
};

constexpr SymptomEntry kShoulder[] = {
    {"lower", "shoulder_point", "The shoulder seam is sloped more: its outer end comes down, and the underarm with it.",
     "shoulder tip gapes; shoulder sloping; shoulder tip high; shoulder tip loose; shoulder tip bubbles; "
     "fold loose neck underarm; fold shoulder neck armhole loose; fold below armhole; underarm sags; shoulder gapes; shoulder seam gapes tip; "
     "shoulder fold loose; shoulder tip fold; shoulder tip round"},
    {"raise", "shoulder_point", "The shoulder seam is sloped less: its outer end goes up, and the underarm with it.",
     "shoulder square; shoulder tip tight; shoulder tip low; shoulder fold tight centre; shoulder seam gapes neck; shoulder tip cuts; "
     "fold tight shoulder tip; shoulder gapes neck; fold shoulder centre front"},
    {"shorten", "shoulder", "The shoulders become shorter at the armhole; the neck stays.",
     "shoulder long; shoulder wide; shoulder loose; armhole falls shoulder; shoulder seam falls; shoulder falls; shoulder seam long; armhole falls; "
     "armhole seam low shoulder; shoulder tip falls; shoulder seam wide; shoulder hangs arm; armhole far out shoulder; armhole seam far out shoulder"},
    {"lengthen", "shoulder", "The shoulders become longer at the armhole; the neck stays.",
     "shoulder short; shoulder narrow; shoulder tight; armhole rides neck; shoulder seam short; shoulder armhole tight; armhole rides shoulder; armhole close neck"},
    {"take_up", "shoulders", "Both shoulders are taken up, front and back: all below comes higher.",
     "bust low; shoulder long take up; petite; whole low; neck bust low; neck bust armhole low; shoulder loose; petite shoulder; bust waist low; "
     "whole sags; petite long; armhole neck low; shoulder sags; whole long above bust"},
    {"let_down", "shoulders", "Both shoulders are let down, front and back: all below comes lower.",
     "bust high; whole high; neck bust high; neck bust armhole high; bust waist high; whole rides; whole short above bust; armhole neck high"},
    {"forward", "shoulder_point", "The outer end of the shoulder seam goes to the front; the neck end stays.",
     "shoulder tip backward; shoulder forward; shoulder round forward; shoulder round; back armhole tight shoulder; shoulder seam tip backward; shoulder tip forward"},
    {"back", "shoulder_point", "The outer end of the shoulder seam goes to the back; the neck end stays.",
     "shoulder seam tip forward; shoulder tip forward; shoulder erect; shoulder tip forward front"},
    {"forward", "shoulder_seam", "The whole shoulder seam goes to the front; the neck fits as before.",
     "shoulder seam backward; whole shoulder seam backward; shoulder seam back; shoulder seam behind"},
    {"back", "shoulder_seam", "The whole shoulder seam goes to the back; the neck fits as before.",
     "shoulder seam forward; whole shoulder seam forward; shoulder seam front"},
    {"take_in", "upper_chest", "The upper front becomes shorter at the centre, to nothing at the armhole.",
     "chest hollow; chest loose; chest fold; chest flat; chest bubbles; chest sags; chest gapes; front hollow above bust; front loose above bust; fold above bust; fold across above bust; dimple above bust; shoulder hollow"},
    {"shorten", "front_shoulder_neck_end", "The front shoulder is taken up at its neck end, to nothing at the outer end.",
     "front sags; front sags below bust; front long; front centre sags; front fold across below bust; front long above bust; front loose across; "
     "front neck long bust; shoulder neck loose front"},
    {"lengthen", "front_shoulder_neck_end", "The front shoulder is let down at its neck end, to nothing at the outer end.",
     "front short; front neck bust short; front short above bust; front tight neck bust; front centre rides shoulder"},
    {"shorten", "back_shoulder_neck_end", "The back shoulder is taken up at its neck end, to nothing at the outer end.",
     "back sags; back sags below blades; back sags centre; back erect long; back long"},
    {"lengthen", "back_shoulder_neck_end", "The back shoulder is let down at its neck end, to nothing at the outer end.",
     "neck back blades short; neck back short"},
    {"take_in", "back_shoulder_dart", "The back shoulder dart becomes wider; the shoulder keeps its length.",
     "back blades tight; shoulder round; back shoulder tight; back blades full; back blades cuts; back shoulder dart narrow; back blades round tight; back shoulder dart tight"},
    {"let_out", "back_shoulder_dart", "The back shoulder dart becomes narrower; the shoulder keeps its length.",
     "back shoulder bubbles; back shoulder fold short; back shoulder dart loose; back shoulder dart wide; back shoulder fold; back shoulder seam bubbles; back blades flat"},
    {"shorten", "back_shoulder_dart", "The stitching of the back shoulder dart ends sooner.",
     "back shoulder dart bubbles; back shoulder dart long; back blades bubbles dart"},
    {"lengthen", "back_shoulder_dart", "The stitching of the back shoulder dart goes on further.",
     "back shoulder dart short; back shoulder dart dimple"},
};

constexpr SymptomEntry kArmhole[] = {
    {"lower", "underarm", "The underarm comes down the side seam, front and back.",
     "armhole cuts; underarm cuts; armhole high; underarm high; underarm tight; armhole cuts underarm; whole rides armhole cuts; armhole tight underarm; "
     "armhole rides; underarm fold tight"},
    {"raise", "underarm", "The underarm goes up the side seam, front and back.",
     "armhole low; underarm low; underarm gapes; whole rides reach; underarm loose; armhole long; reach rides; reach tight whole; underarm sags loose; armhole low reach; "
     "reach side rides"},
    {"widen", "armhole", "The armholes go into the pieces all round, the underarm with them.",
     "armhole tight all round; armhole tight; armhole narrow; armhole small; armhole cuts all round"},
    {"narrow", "armhole", "The armholes come out of the pieces all round, the underarm with them.",
     "armhole loose all round; armhole wide; armhole loose; armhole big; armhole low all round"},
    {"take_in", "front_armhole_edge", "The gaping front armhole is closed; its cloth goes into the bust dart.",
     "front armhole gapes; armhole gapes; front armhole loose; front armhole fold bust; armhole gapes bust; front armhole bubbles; armhole fold bust; armhole loose bust"},
    {"take_in", "back_armhole_edge", "The gaping back armhole is closed; its cloth goes into the back shoulder dart.",
     "back armhole gapes; armhole gapes; back armhole loose; back armhole gapes blades; back armhole bubbles; back armhole fold blades"},
    {"scoop", "front_armhole", "The front armhole is hollowed, most at the across point.",
     "front armhole cuts; front armhole tight; front armhole fold tight; front armhole cuts reach; front armhole rub; front armhole forward; armhole front crease"},
    {"fill", "front_armhole", "The front armhole is filled out, most at the across point.",
     "front armhole hollow; front armhole narrow; front armhole far in; front armhole backward; front armhole close"},
    {"fill", "back_armhole", "The back armhole is filled out, most at the across point: it strains as she reaches.",
     "back armhole cuts; back armhole tight; back armhole tight reach; back armhole hollow; reach cuts back; back armhole narrow; back armhole cuts reach"},
    {"scoop", "back_armhole", "The back armhole is hollowed, most at the across point: its edge presses on the arm.",
     "back armhole cuts; back armhole wide; back armhole fold; back armhole far out; back armhole full; back armhole falls"},
    {"narrow", "across_front", "The front becomes narrower between the armholes.",
     "front wide across; chest wide; front loose across chest; front armhole fold upright; front wide; chest wide across; front armhole wide; front armhole falls; front underarm fold"},
    {"widen", "across_front", "The front becomes wider between the armholes.",
     "front tight across; chest tight; front narrow across; chest narrow; front narrow; front tight chest; chest tight across; front armhole tight across; chest full"},
};

constexpr SymptomPart kUpper[] = {
    {"neck", "neckline; throat; nape; collar", kNeck},
    {"shoulder", "upper chest; chest", kShoulder},
    {"armhole", "underarm; arm; scye; armscye; armpit", kArmhole},
};
// clang-format on

}  // namespace

std::span<const SymptomPart> upper_symptoms() { return kUpper; }

}  // namespace blockwright
