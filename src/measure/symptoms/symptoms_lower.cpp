#include "symptom_table.hpp"

namespace blockwright {
namespace {

// As in symptoms_upper.cpp.
// clang-format off
constexpr SymptomEntry kBust[] = {
    {"fuller", "bust", "The front becomes wider and longer over the bust; the bust darts become wider.",
     "bust tight; bust fold tight; bust full; bust strain front rides; bust short; front rides bust; bust narrow; front short bust full; bust full tight; "
     "hem front rides bust; front hem rides full; front hem short full; bust tight armhole gapes; bust cuts; bust point tight fold; bust point side tight fold"},
    {"smaller", "bust", "The front becomes narrower and shorter over the bust; the bust darts become narrower.",
     "bust loose; bust bubbles; bust flat; bust fold loose; bust hollow; bust empty; bust loose dart bubbles; bust fold; bust wide; bust sags; bust long"},
    {"let_out", "side_at_bust", "The side seams go out at the bust, to nothing at the waist.",
     "bust tight; bust tight side; bust tight all round; bust narrow; side tight; underarm bust tight; bust tight across; side bust tight"},
    {"take_in", "side_at_bust", "The side seams come in at the bust, to nothing at the waist.",
     "bust loose side; bust loose all round; bust wide; side loose underarm; side loose bust; bust loose; side gapes; side fold bust"},
    {"raise", "bust_point", "The bust point goes up, and the darts point to it.",
     "bust point low; dart low; dart bust point low; dart below bust; dart long below; bust low; dart bust point below; bust point below; dart sags; bust sags low"},
    {"lower", "bust_point", "The bust point comes down, and the darts point to it.",
     "bust point high; dart high; dart bust point high; dart above bust; bust high; dart bust point above; bust point above"},
    {"narrow", "bust_points", "The bust points come closer together.",
     "bust point apart; dart apart; dart bust point apart; bust apart; bust point wide; bust point loose front centre; front centre pinch out across; bust point side; dart wide apart; "
     "dart bust point wide; bust point centre front pinch out; bust loose centre front"},
    {"widen", "bust_points", "The bust points go further apart.",
     "bust point close; dart close; dart bust point close; bust close; bust point narrow; dart bust point narrow"},
    {"shorten", "front_waist_dart", "The stitching of the front waist dart ends sooner, further from the bust point.",
     "dart bust point bubbles; dart bubbles; dart long; waist dart bubbles; front waist dart long; dart bust point bubbles front; bust point bubbles; waist dart long; dart bust point round; dart round; dart bust point long"},
    {"lengthen", "front_waist_dart", "The stitching of the front waist dart goes on nearer to the bust point.",
     "dart short; dart bust point short; dart dimple; waist dart short; front waist dart short; dart bust point dimple; bust point dimple"},
    {"shorten", "front_shoulder_dart", "The stitching of the front shoulder dart ends sooner, further from the bust point.",
     "shoulder dart bubbles; front shoulder dart long; shoulder dart long; front shoulder dart bubbles"},
    {"lengthen", "front_shoulder_dart", "The stitching of the front shoulder dart goes on nearer to the bust point.",
     "shoulder dart short; front shoulder dart short; shoulder dart dimple"},
    {"take_in", "front_waist_dart", "The front waist darts are stitched wider.",
     "waist dart loose; dart loose; front waist dart loose; dart fold; front waist loose; dart bag; dart narrow; waist dart narrow"},
    {"let_out", "front_waist_dart", "The front waist darts are stitched narrower: room at waist and underbust, not at the bust.",
     "waist dart tight; dart tight; front waist dart tight; dart strain; front waist tight; dart wide; waist dart wide; dart cuts; underbust tight; underbust cuts"},
    {"take_in", "front_shoulder_dart", "The front shoulder dart is stitched wider.",
     "shoulder dart loose; front shoulder dart loose; front shoulder dart fold; bust dart loose; bust dart narrow; shoulder dart narrow"},
    {"let_out", "front_shoulder_dart", "The front shoulder dart is stitched narrower.",
     "shoulder dart tight; front shoulder dart tight; front shoulder dart strain; bust dart tight; bust dart wide; shoulder dart wide"},
    {"take_in", "under_bust", "The front waist darts are curved: the front comes in under the bust.",
     "underbust loose; underbust hollow; underbust gapes; underbust fold; bust below loose; underbust wide; underbust bubbles"},
};

constexpr SymptomEntry kBack[] = {
    {"widen", "across_back", "The back becomes wider between the armholes.",
     "back tight across; back tight; back narrow; blades tight across; back strain across; back narrow across; back tight reach; blades narrow; back blades tight reach; shoulder tight across; back reach"},
    {"narrow", "across_back", "The back becomes narrower between the armholes.",
     "back wide; back loose across; back wide across; back fold upright; back loose; back armhole fold upright; back bag; blades wide; back upright fold armhole; back shoulder wide across; back underarm fold"},
    {"lengthen", "upper_back", "The upper back becomes longer at the centre; the back shoulder dart opens.",
     "back round; shoulder round; back blades round; back short; back rides; back centre short; back waist rides round; back fold blades underarm; back blades short; upper back short; back neck falls"},
    {"shorten", "upper_back", "The upper back becomes shorter at the centre, to nothing at the armhole.",
     "back blades fold across; back blades loose; back blades long; back erect; back blades fold; back fold across; back blades sags; back flat"},
    {"lengthen", "below_nape", "The back becomes longer just below the nape.",
     "back neck round; back neck tight round; back neck gapes round; back neck short round; back neck full; back neck hump"},
    {"shorten", "back_waist", "The back becomes shorter at the waist, to nothing at the side.",
     "back waist fold across; back waist hollow; back waist fold; back waist long; back waist loose fold; back waist sags; back waist bubbles; centre back long; back hollow; back centre waist fold"},
    {"lengthen", "back_waist", "The back becomes longer at the waist, to nothing at the side.",
     "back waist short; back waist high; back waist rides; centre back short; back waist above"},
    {"raise", "back_hem", "The waist edge goes up at the centre back, to nothing at the side.",
     "back hem long; back hem low; back hem sags"},
    {"lower", "back_hem", "The waist edge comes down at the centre back, to nothing at the side.",
     "back hem short; back hem rides; back hem high"},
    {"take_in", "back_waist_dart", "The back waist darts are stitched wider.",
     "back waist dart loose; back dart loose; back waist loose; back dart fold; back waist dart narrow"},
    {"let_out", "back_waist_dart", "The back waist darts are stitched narrower: room at the waist, none at the bust line.",
     "back waist dart tight; back dart tight; back waist tight; back dart strain; back waist dart wide"},
    {"shorten", "back_waist_dart", "The stitching of the back waist dart ends sooner.",
     "back dart bubbles; back waist dart bubbles; back dart long; back waist dart long"},
    {"lengthen", "back_waist_dart", "The stitching of the back waist dart goes on further.",
     "back dart short; back waist dart short; back dart dimple"},
};

constexpr SymptomEntry kWaist[] = {
    {"take_in", "waist", "The waist comes in: sides first, then the waist darts.",
     "waist loose; waist wide; waist gapes; waist loose all round; waist bubbles; waist fold upright"},
    {"let_out", "waist", "The waist goes out: darts and sides share it.",
     "waist tight; waist narrow; waist cuts; waist tight all round"},
    {"take_in", "waist_darts", "The waist darts take the waist in; the sides and the bust stay.",
     "waist dart loose; waist loose dart; waist loose front back; waist loose"},
    {"let_out", "waist_darts", "The waist darts let the waist out: room there and under the bust, none at the bust line.",
     "waist dart tight; waist tight dart; waist tight front back; waist tight"},
    {"take_in", "side_at_waist", "The side seams come in at the waist, to nothing at the underarm.",
     "waist side loose; side waist loose; waist side gapes; waist side wide; side seam loose waist; waist side fold"},
    {"let_out", "side_at_waist", "The side seams go out at the waist, to nothing at the underarm.",
     "waist side tight; side waist tight; waist side narrow; side seam tight waist"},
    {"lengthen", "below_bust", "The bodice becomes longer between underarm and waist, all round.",
     "waist high; waist rides; whole short; waist above; waist high all round; hem high all round; waist seam rides; whole short below bust; hem short; hem rides; hem high; waist short; side short; side seam short; hem side rides; hem side high; hem side short; waist side rides; waist side high"},
    {"shorten", "below_bust", "The bodice becomes shorter between underarm and waist, all round.",
     "waist low; waist sags; whole long; waist below; waist low all round; hem low all round; hem long; whole long below bust; waist fold across; whole fold across waist; hem low; waist long; side long; side seam long; hem side sags; hem side low; hem side long; waist side sags; waist side low"},
    {"lengthen", "above_bust", "The bodice becomes longer between shoulder and underarm.",
     "bust high; bust high neck armhole; bust high armhole; whole high; whole short above bust; armhole high bust high; chest short"},
    {"shorten", "above_bust", "The bodice becomes shorter between shoulder and underarm.",
     "bust low; petite; bust low neck armhole; bust low armhole; whole long above bust; whole low; armhole low bust low; chest long; fold across above bust"},
    {"lower", "front_hem", "The waist edge comes down at the centre front, to nothing at the side.",
     "front hem short; front hem short bust full; front hem high; front hem rides; front hem rides bust"},
    {"raise", "front_hem", "The waist edge goes up at the centre front, to nothing at the side.",
     "front hem long; front hem low; front hem sags"},
    {"lengthen", "front_waist", "The front becomes longer at the waist, to nothing at the side.",
     "front waist rides; front waist short; front waist high; centre front short; centre front rides; front waist above"},
    {"shorten", "front_waist", "The front becomes shorter at the waist, to nothing at the side.",
     "front waist long; front waist low; front waist sags; centre front long; centre front sags; front waist fold across"},
};

constexpr SymptomEntry kSides[] = {
    {"take_in", "side", "The side seams come in by the same amount from underarm to waist.",
     "side loose; side seam loose; side fold; side seam fold; side wide; side bubbles; side seam bubbles; side seam gapes; side loose wide; side seam upright fold; whole loose; whole wide; loose all round; one side flat; one side loose"},
    {"let_out", "side", "The side seams go out by the same amount from underarm to waist.",
     "side tight; side seam tight; underbust tight; side narrow; side seam strain; side seam narrow; whole tight; whole narrow; tight all round; one side full; one side tight"},
    {"forward", "side_seam", "An even strip of the side goes from the front to the back.",
     "side seam backward; side seam back; side backward; side seam waist backward"},
    {"back", "side_seam", "An even strip of the side goes from the back to the front.",
     "side seam forward; side seam front; side forward; side seam waist forward"},
    {"take_in", "centre_back", "The centre back seam is curved in, most at the waist.",
     "centre back loose; centre back wide; centre back bubbles; centre back gapes; centre back fold upright; back loose blades; centre back sags; out at each centre back"},
    {"let_out", "centre_back", "The centre back goes out, most at the waist.",
     "centre back tight; centre back narrow; centre back gapes; centre back strain; back tight close"},
    {"take_in", "centre_front", "The centre front gets a seam that is curved in, most at the waist.",
     "centre front loose; centre front gapes; centre front hollow; centre front bubbles; centre front fold upright; centre front wide"},
    {"let_out", "centre_front", "The centre front gets a seam that goes out, most at the waist.",
     "centre front tight; centre front narrow; centre front strain"},
};

constexpr SymptomEntry kOneSide[] = {
    {"lower", "one_shoulder", "The shoulder of one side is sloped more.",
     "one shoulder low; one shoulder sloping; one shoulder fold; one shoulder sags; one shoulder gapes; one shoulder falls"},
    {"raise", "one_shoulder", "The shoulder of one side is sloped less.",
     "one shoulder high; one shoulder square; one shoulder tight"},
    {"fuller", "one_breast", "The front of one side becomes wider and longer over the bust.",
     "one bust full; one bust tight; one bust large; one side full"},
    {"smaller", "one_breast", "The front of one side becomes narrower and shorter over the bust.",
     "one bust flat; one bust loose; one bust bubbles; one side flat"},
    {"raise", "one_side_waist", "The waist edge of one side goes up at the side seam.",
     "one waist high; one hem low; one waist long; one side waist high; one side hem long; one side long; one hem long; one side high"},
    {"lower", "one_side_waist", "The waist edge of one side comes down at the side seam.",
     "one waist low; one hem high; one hem short; one side waist low; one side hem short; one side short; one hem rides; one side low"},
};

constexpr SymptomPart kLower[] = {
    {"bust", "breast; dart; bust point; under bust; cup", kBust},
    {"back", "shoulder blade; blade; upper back; lower back", kBack},
    {"waist", "hem; length; waist line; lengths", kWaist},
    {"side", "side seam; centre; centre back; centre front; center", kSides},
    {"one side", "left; right; one side alone; uneven", kOneSide},
};
// clang-format on

}  // namespace

std::span<const SymptomPart> lower_symptoms() { return kLower; }

}  // namespace blockwright
